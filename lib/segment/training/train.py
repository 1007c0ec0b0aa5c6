"""
Train one member: python train.py OUT_DIR --seed 1 --minutes 9, or on every GPU: torchrun --nproc-per-node gpu train.py OUT_DIR ...
New scenes are rendered all the time, photographed twice, learned from at once and shown again a few times later.
Writes OUT_DIR/weights.npz, training.json and a contact sheet.
"""

import argparse
import copy
import json
import os
import time

import numpy as np
import torch
import torch.distributed as group

from draw import Draw
from features import features
from losses import loss_of
from network import HEAD, WIDTHS, ToeTissue
from replay import Replay
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
    a.add_argument('--widths', type=int, nargs='+', default=list(WIDTHS))
    a.add_argument('--head', type=int, default=HEAD)
    a.add_argument('--again', type=int, default=3, help='batches shown again for every two new ones')
    a.add_argument('--places', type=int, default=4096, help='maps kept to be shown again')
    a.add_argument('--go-on-from', help='weights.npz to go on from; a name that torchrun does not take for one of its own')
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
    keep = min(0.999, (step + 1) / (step + 20))
    with torch.no_grad():
        for group in (lambda m: list(m.parameters()), lambda m: [b for b in m.buffers() if b.dtype.is_floating_point]):
            torch._foreach_mul_(group(slow), keep)
            torch._foreach_add_(group(slow), group(fast), alpha=1 - keep)


def device_of_this_process():
    """(device, rank, processes): one process without torchrun, else one a GPU."""
    if 'RANK' not in os.environ:
        return ('cuda' if torch.cuda.is_available() else 'cpu'), 0, 1
    group.init_process_group('nccl' if torch.cuda.is_available() else 'gloo')
    rank = group.get_rank()
    if not torch.cuda.is_available():
        return 'cpu', rank, group.get_world_size()
    torch.cuda.set_device(int(os.environ['LOCAL_RANK']))
    return 'cuda', rank, group.get_world_size()


def share_passed(begun, minutes, processes, device):
    """How much of the time is over, the same number in every process."""
    share = torch.tensor([(time.time() - begun) / (60 * minutes)], device=device)
    if processes > 1:
        group.broadcast(share, 0)
    return share.item()


def average_gradients(network, processes):
    if processes == 1:
        return
    gradients = [p.grad for p in network.parameters()]
    flat = torch._utils._flatten_dense_tensors(gradients)
    group.all_reduce(flat)
    for gradient, mean in zip(gradients, torch._utils._unflatten_dense_tensors(flat / processes, gradients)):
        gradient.copy_(mean)


def lessons(a, replay, seed, device):
    """New maps first, then earlier ones again."""
    for inputs, targets, image in maps(a.batch, seed, device, a.px):
        replay.keep(inputs, targets)
        yield inputs, targets
    for _ in range(a.again):
        yield replay.draw(a.batch)


def save(a, slow, begun, step, processes, log):
    np.savez(f'{a.out}/weights.npz', **{k: v.float().cpu().numpy() if v.dtype.is_floating_point else v.cpu().numpy()
                                        for k, v in slow.state_dict().items()})
    facts = dict(arguments=vars(a), processes=processes, minutes=round((time.time() - begun) / 60, 2), steps=step,
                 mapsShown=step * a.batch * processes, mapsRendered=round(step * a.batch * processes * 2 / (2 + a.again)), losses=log)
    json.dump(facts, open(f'{a.out}/training.json', 'w'))


def main():
    a = parse()
    os.makedirs(a.out, exist_ok=True)
    device, rank, processes = device_of_this_process()
    torch.manual_seed(a.seed)
    torch.backends.cudnn.benchmark = True
    network = ToeTissue(tuple(a.widths), a.head).to(device, memory_format=torch.channels_last)
    if a.go_on_from:
        load_weights(network, a.go_on_from)
    slow = copy.deepcopy(network).eval()
    torch.manual_seed(1000 * a.seed + rank)
    optimiser = torch.optim.AdamW(network.parameters(), lr=a.rate, weight_decay=1e-3)
    replay, begun, step, log, scenes = Replay(a.places), time.time(), 0, [], 0
    while (share := share_passed(begun, a.minutes, processes, device)) < 1:
        rate = a.rate * min(1, (step + 1) / 300) * (0.5 * (1 + np.cos(np.pi * share)) + 0.003)
        for part in optimiser.param_groups:
            part['lr'] = rate
        for inputs, targets in lessons(a, replay, (a.seed * 1_000_003 + scenes) * processes + rank, device):
            with torch.autocast(device, torch.bfloat16, enabled=device == 'cuda'):
                logits = network(inputs.contiguous(memory_format=torch.channels_last))
            loss = loss_of(logits.float(), targets, a.dice)
            optimiser.zero_grad(set_to_none=True)
            loss.backward()
            average_gradients(network, processes)
            torch.nn.utils.clip_grad_norm_(network.parameters(), 1.0)
            optimiser.step()
            average(slow, network, step)
            step += 1
        scenes += 1
        if scenes % 40 == 0 and rank == 0:
            log.append((step, round(time.time() - begun, 1), round(loss.item(), 4)))
            print(*log[-1], flush=True)
            save(a, slow, begun, step, processes, log)
    if rank > 0:
        return
    save(a, slow, begun, step, processes, log)
    with torch.no_grad():
        inputs, targets, image = next(maps(16, a.seed * 7 + 1, device, a.px))
        guess = torch.sigmoid(slow(inputs)).float()
    sheet(image[:16].float().cpu().numpy(), targets[:16].cpu().numpy(), guess[:16].cpu().numpy(), 2).save(f'{a.out}/sheet.jpg', quality=80)


if __name__ == '__main__':
    main()
