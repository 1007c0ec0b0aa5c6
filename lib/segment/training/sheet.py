"""A contact sheet of rendered maps with their labels, to be looked at: python sheet.py OUT.png [shifted]"""

import sys

import numpy as np
import torch
from PIL import Image

from features import PLANES

COLOURS = dict(nailPlate=(255, 0, 255), groove=(255, 255, 255), raw=(40, 80, 255), macerated=(0, 255, 255),
               erythema=(0, 255, 0), foldMarginTreated=(255, 255, 0), toe=(255, 128, 0))


def outline_of(mask):
    inside = mask > 0.5
    edge = np.zeros_like(inside)
    edge[1:, :] |= inside[1:, :] != inside[:-1, :]
    edge[:, 1:] |= inside[:, 1:] != inside[:, :-1]
    return edge


def tile(image, planes, guess=None):
    coded = (np.clip(image.transpose(1, 2, 0), 0, 1) ** (1 / 2.2) * 255).astype(np.uint8)
    tiles = [coded]
    for layer in (planes, guess):
        if layer is None:
            continue
        drawn = coded.copy()
        for name, colour in COLOURS.items():
            drawn[outline_of(layer[PLANES.index(name)])] = colour
        tiles.append(drawn)
    return np.concatenate(tiles, 1)


def sheet(images, targets, guesses=None, columns=4):
    tiles = [tile(images[k], targets[k], None if guesses is None else guesses[k]) for k in range(len(images))]
    rows = [np.concatenate(tiles[k:k + columns], 1) for k in range(0, len(tiles) - columns + 1, columns)]
    return Image.fromarray(np.concatenate(rows, 0))


if __name__ == '__main__':
    from scene import render
    device = 'cuda' if torch.cuda.is_available() else 'cpu'
    image, seen, targets, _ = render(16, int(sys.argv[3]) if len(sys.argv) > 3 else 5, device, 8, 'shifted' in sys.argv)
    sheet(image.cpu().numpy(), targets.cpu().numpy()).save(sys.argv[1])
