"""
Train one member: python train.py OUT_DIR --seed 1 --minutes 9
Every two steps render new scenes, photographed twice, so no map is seen twice. Writes OUT_DIR/weights.npz, losses.json and a contact sheet.
"""

import argparse
import copy
import json
import os
import time

import numpy as np
import torch

from draw import Draw
from features import features
from losses import loss_of
from network import ToeTissue
from scene import compose, shoot
from sheet import sheet


def parse():
    a = argparse.ArgumentParser()
    a.add_argument('out')
    a.add_argument('--seed', type=int, default=1)
    a.add_argument('--minutes', type=float, default=9)
    a.add_argument('--batch', type=int, default=56)
    a.add_argument('--rate', type=float, default=2.5e-3)
    a.add_argument('--dice', type=float, default=0.35)
    a.add_argument('--px', type=int, default=8, help='pixels per millimetre; less is a quick trial on a CPU')
    a.add_argument('--widths', type=int, nargs='+', default=[24, 36, 56, 80, 96])
    a.add_argument('--head', type=int, default=12)
    a.add_argument('--start', help='weights.npz to go on from')
    return a.parse_args()


def load_weights(network, path):
    network.load_state_dict({k: torch.from_numpy(v) for k, v in np.load(path).items()})


def maps(batch, seed, device, px):
    """Two photos, the second mirrored, of each of `batch` new scenes, shuffled into two training batches."""
    d = Draw(batch, device, seed, px)
    image, focus, targets, _ = compose(d)
    shots = [shoot(d, image, focus, targets), [m.flip(-1) for m in shoot(d, image, focus, targets)]]
    image, seen, targets = (torch.cat([shot[k] for shot in shots]) for k in range(3))
    rows, columns = (32 * (n // 32) for n in image.shape[-2:])
    image, seen, targets = image[..., :rows, :columns], seen[..., :rows, :columns], targets[..., :rows, :columns]
    # The network may know roughly where it looks, never exactly.
    shift = torch.empty(2, len(image), 1, 1, device=device).uniform_(-0.35, 0.35)
    inputs = features(image, seen, shift[0], shift[1])
    for part in torch.randperm(len(image)).to(device).split(batch):
        yield inputs[part], targets[part], image[part]


def average(slow, fast, step):
    keep = min(0.998, (step + 1) / (step + 20))
    with torch.no_grad():
        for group in (lambda m: list(m.parameters()), lambda m: [b for b in m.buffers() if b.dtype.is_floating_point]):
            torch._foreach_mul_(group(slow), keep)
            torch._foreach_add_(group(slow), group(fast), alpha=1 - keep)


def main():
    a = parse()
    os.makedirs(a.out, exist_ok=True)
    device = 'cuda' if torch.cuda.is_available() else 'cpu'
    torch.manual_seed(a.seed)
    torch.backends.cudnn.benchmark = True
    network = ToeTissue(tuple(a.widths), a.head).to(device, memory_format=torch.channels_last)
    if a.start:
        load_weights(network, a.start)
    slow = copy.deepcopy(network).eval()
    optimiser = torch.optim.AdamW(network.parameters(), lr=a.rate, weight_decay=1e-3)
    begun, step, log = time.time(), 0, []
    limit = a.minutes * 60
    while (passed := time.time() - begun) < limit:
        share = passed / limit
        rate = a.rate * min(1, (step + 1) / 150) * (0.5 * (1 + np.cos(np.pi * share)) + 0.003)
        for group in optimiser.param_groups:
            group['lr'] = rate
        for inputs, targets, image in maps(a.batch, a.seed * 1_000_003 + step, device, a.px):
            with torch.autocast(device, torch.bfloat16, enabled=device == 'cuda'):
                logits = network(inputs.contiguous(memory_format=torch.channels_last))
            loss = loss_of(logits.float(), targets, a.dice)
            optimiser.zero_grad(set_to_none=True)
            loss.backward()
            torch.nn.utils.clip_grad_norm_(network.parameters(), 1.0)
            optimiser.step()
            average(slow, network, step)
            step += 1
        if step % 100 == 0:
            log.append((step, round(passed, 1), round(loss.item(), 4)))
            print(*log[-1], flush=True)
    np.savez(f'{a.out}/weights.npz', **{k: v.float().cpu().numpy() if v.dtype.is_floating_point else v.cpu().numpy()
                                        for k, v in slow.state_dict().items()})
    json.dump(dict(arguments=vars(a), steps=step, maps=step * a.batch, losses=log), open(f'{a.out}/training.json', 'w'))
    with torch.no_grad():
        guess = torch.sigmoid(slow(inputs)).float()
    sheet(image[:16].float().cpu().numpy(), targets[:16].cpu().numpy(), guess[:16].cpu().numpy(), 2).save(f'{a.out}/sheet.jpg', quality=80)


if __name__ == '__main__':
    main()
