"""
Figures of one or more members on scenes no training saw: python evaluate.py OUT.json BATCHES WEIGHTS.npz [WEIGHTS.npz ...] [plain]
The ordinary renderer with held-out seeds, and the shifted one (other skin model, cameras, curves, shapes, edges).
"""

import json
import sys

import numpy as np
import torch

from features import PLANES, features
from network import ToeTissue, shape_of
from scene import render
from train import load_weights

CLASSES = ('very light', 'light', 'intermediate', 'tan', 'brown', 'dark')
BATCH, HELD_OUT_SEED = 16, 900_000_000
PLANE = {name: k for k, name in enumerate(PLANES)}
MEASURED_MIN_CONFIDENCE = 0.75
EDGES_MM = {'under 1.5 mm': (0, 1.5), '1.5-3 mm': (1.5, 3), 'over 3 mm': (3, 99)}


def predict(networks, image, seen, mirrored=True):
    """Mean over members and their mirror images, and how much they differ."""
    answers = []
    for network in networks:
        answers.append(torch.sigmoid(network(features(image, seen)).float()))
        if mirrored:
            answers.append(torch.sigmoid(network(features(image.flip(-1), seen.flip(-1))).float()).flip(-1))
    stack = torch.stack(answers)
    return stack.mean(0), stack.std(0, unbiased=False)


def points(mask, px):
    return mask.nonzero().float() / px


def border(mask):
    inside = mask > 0.5
    edge = torch.zeros_like(inside)
    edge[1:] |= inside[1:] != inside[:-1]
    edge[:, 1:] |= inside[:, 1:] != inside[:, :-1]
    return edge


def farthest(region, line, px):
    """Greatest distance in millimetres from the region's pixels to the line."""
    a, b = points(region > 0.5, px), points(line > 0.6, px)
    return torch.cdist(a, b).amin(1).max().item() if len(a) and len(b) else float('nan')


def line_error(guess_unit, true_line, px):
    """Root mean square distance from the true margin to the border of the found nail unit, millimetres."""
    a, b = points(true_line > 0.9, px), points(border(guess_unit), px)
    return torch.cdist(a, b).amin(1).square().mean().sqrt().item() if len(a) and len(b) else float('nan')


def one_map(guess, spread, truth, facts, k, px):
    """Plain numbers of one map."""
    row = dict(tone=int(facts.ita_class[k]), plateau=float(facts.plateau[k]), edge=float(facts.edge_mm[k]), tilt=float(facts.tilt[k]),
               cut=float(facts.cut_left[k] + facts.cut_right[k]))
    for name in ('toe', 'nailPlate', 'groove', 'raw', 'macerated', 'erythema', 'nailUnit'):
        g, t = guess[PLANE[name]] > 0.5, truth[PLANE[name]] > 0.5
        row[name] = dict(area=g.sum().item() / px ** 2, truth=t.sum().item() / px ** 2,
                         common=(g & t).sum().item() / px ** 2)
    red = guess[PLANE['erythema']]
    row['confidence'] = red[red > 0.5].mean().item() if (red > 0.5).any() else 0.0
    row['spread'] = spread[PLANE['erythema']][red > 0.2].mean().item() if (red > 0.2).any() else 0.0
    if row['cut'] == 1:
        line = truth[PLANE['foldMarginTreated']]
        row['margin'] = line_error(guess[PLANE['nailUnit']], line, px)
        if row['erythema']['truth'] > 4 and row['erythema']['area'] > 1:
            row['reach'] = farthest(red, guess[PLANE['foldMarginTreated']], px) - farthest(truth[PLANE['erythema']], line, px)
    return row


def quantiles(values, *shares):
    clean = [v for v in values if v == v]
    return [round(float(np.quantile(clean, s)), 3) for s in shares] if clean else None


def dice(row, name):
    r = row[name]
    return 2 * r['common'] / max(1e-9, r['area'] + r['truth'])


def too_large(row):
    """By what share of the true area the found one is larger; negative where it is smaller."""
    return row['erythema']['area'] / row['erythema']['truth'] - 1


def reddened(rows):
    """Maps with redness worth measuring, and those of them where the model is sure of it."""
    red = [r for r in rows if r['erythema']['truth'] >= 5]
    return red, [r for r in red if r['confidence'] >= MEASURED_MIN_CONFIDENCE]


def area_per_edge(rows):
    """Area of sure regions by how soft their edge was drawn: a model that has seen few soft edges errs there, to one side."""
    _, sure = reddened(rows)
    parts = {name: [r for r in sure if low <= r['edge'] < high] for name, (low, high) in EDGES_MM.items()}
    return {name: dict(maps=len(part), areaBias=quantiles([too_large(r) for r in part], 0.5),
                       areaError=quantiles([abs(too_large(r)) for r in part], 0.5, 0.95)) for name, part in parts.items()}


def summary(rows):
    red, sure = reddened(rows)
    clean = [r for r in rows if r['erythema']['truth'] < 0.2]
    share = lambda r: abs(too_large(r))
    has = lambda name, least: [dice(r, name) for r in rows if r[name]['truth'] >= least]
    return dict(
        maps=len(rows), withRedness=len(red),
        erythemaDice=quantiles([dice(r, 'erythema') for r in red], 0.5, 0.1),
        erythemaAreaError=quantiles([share(r) for r in red], 0.5, 0.95),
        erythemaAreaBias=quantiles([too_large(r) for r in red], 0.5),
        measuredShare=round(len(sure) / max(1, len(red)), 3),
        measuredAreaError=quantiles([share(r) for r in sure], 0.5, 0.95),
        measuredDice=quantiles([dice(r, 'erythema') for r in sure], 0.5, 0.1),
        cleanMaps=len(clean), cleanFalseAreaMm2=quantiles([r['erythema']['area'] for r in clean], 0.5, 0.9, 0.95),
        cleanUnder3Mm2=round(float(np.mean([r['erythema']['area'] <= 3 for r in clean])), 3) if clean else None,
        cleanSureUnder3Mm2=round(float(np.mean([r['erythema']['area'] <= 3 or r['confidence'] < MEASURED_MIN_CONFIDENCE for r in clean])), 3) if clean else None,
        toeDice=quantiles(has('toe', 50), 0.5, 0.1), plateDice=quantiles(has('nailPlate', 20), 0.5, 0.1),
        unitDice=quantiles(has('nailUnit', 20), 0.5, 0.1), grooveDice=quantiles(has('groove', 4), 0.5, 0.1),
        rawDice=quantiles(has('raw', 2), 0.5, 0.1), maceratedDice=quantiles(has('macerated', 2), 0.5, 0.1),
        marginRmsMm=quantiles([r['margin'] for r in rows if 'margin' in r], 0.5, 0.9),
        reachErrorMm=quantiles([abs(r['reach']) for r in rows if 'reach' in r], 0.5, 0.95),
        measuredReachErrorMm=quantiles([abs(r['reach']) for r in sure if 'reach' in r], 0.5, 0.95))


def calibration(bins):
    """Expected calibration error, and per tenth of probability what share was truly red."""
    count, said, was = bins
    total = count.sum()
    error = float((np.abs(said - was)).sum() / total)
    return dict(expectedError=round(error, 4), shareRedPerTenth=[round(float(w / max(1, c)), 3) for w, c in zip(was, count)])


def judge(networks, device, batches, shifted, mirrored=True, px=8):
    rows, bins = [], np.zeros((3, 10))
    for k in range(batches):
        image, seen, targets, facts = render(BATCH, HELD_OUT_SEED + k + 500_000 * shifted, device, px, shifted)
        guess, spread = predict(networks, image, seen, mirrored)
        on_toe = targets[:, PLANE['toe']] > 0.5
        red, truth = guess[:, PLANE['erythema']][on_toe], (targets[:, PLANE['erythema']][on_toe] > 0.5).float()
        index = (red * 10).long().clamp(0, 9)
        for row, values in enumerate((torch.ones_like(red), red, truth)):
            bins[row] += torch.bincount(index, values.double(), 10).cpu().numpy()
        rows += [one_map(guess[b], spread[b], targets[b], facts, b, px) for b in range(BATCH)]
    usual = [r for r in rows if r['tilt'] < np.deg2rad(36)]
    return dict(all=summary(usual), calibration=calibration(bins), perEdge=area_per_edge(usual),
                perTone={name: summary([r for r in usual if r['tone'] == k]) for k, name in enumerate(CLASSES)})


@torch.no_grad()
def main():
    device = 'cuda' if torch.cuda.is_available() else 'cpu'
    batches = int(sys.argv[2])
    networks = []
    for path in [p for p in sys.argv[2:] if p.endswith('.npz')]:
        networks.append(ToeTissue(*shape_of(np.load(path))).to(device).eval())
        load_weights(networks[-1], path)
    mirrored = 'plain' not in sys.argv
    figures = dict(mirrored=mirrored, heldOut=judge(networks, device, batches, False, mirrored),
                   shifted=judge(networks, device, batches, True, mirrored))
    json.dump(figures, open(sys.argv[1], 'w'), indent=1)
    for setting in ('heldOut', 'shifted'):
        result = figures[setting]
        print(setting, json.dumps(result['all']), json.dumps(result['calibration']))
        for edge, part in result['perEdge'].items():
            print('  edge', edge, part)
        for tone, part in result['perTone'].items():
            print(' ', tone, {k: part[k] for k in ('erythemaDice', 'erythemaAreaError', 'measuredShare', 'measuredAreaError', 'cleanUnder3Mm2')})


if __name__ == '__main__':
    main()
