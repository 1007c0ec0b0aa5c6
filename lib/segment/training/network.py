"""A small U-Net: thin where pixels are many, wide where they are few; four map pixels are answered at once."""

import torch
from torch import nn
import torch.nn.functional as F

from features import CHANNELS, PLANES

WIDTHS = (16, 48, 72, 112, 144)
HEAD = 32


def convolution(inputs, outputs, stride=1, size=3):
    return nn.Sequential(nn.Conv2d(inputs, outputs, size, stride, size // 2, bias=False), nn.BatchNorm2d(outputs), nn.ReLU(inplace=True))


class Residual(nn.Module):
    def __init__(self, width):
        super().__init__()
        self.first = convolution(width, width)
        self.second = nn.Sequential(nn.Conv2d(width, width, 3, 1, 1, bias=False), nn.BatchNorm2d(width))

    def forward(self, x):
        return F.relu(x + self.second(self.first(x)))


class ToeTissue(nn.Module):
    """
    features [batch, 8, rows, columns] to logits [batch, planes, rows, columns]; rows and columns divide by 32.
    The finest level has half the map's resolution and little width, since most of the time is spent there; its answer
    holds the four pixels of each 2 x 2 block side by side and is spread out at the end.
    """

    def __init__(self, widths=WIDTHS, head=HEAD):
        super().__init__()
        self.widths, self.head_width = widths, head
        self.stem = convolution(len(CHANNELS), widths[0], 2, 5)
        self.down = nn.ModuleList(nn.Sequential(convolution(widths[k - 1], widths[k], 2), Residual(widths[k]))
                                  for k in range(1, len(widths)))
        deepest = widths[-1]
        self.overview = nn.Sequential(nn.Conv2d(deepest, deepest // 2, 1), nn.ReLU(), nn.Conv2d(deepest // 2, deepest, 1))
        self.bottom = Residual(deepest)
        self.reduce, self.up = nn.ModuleList(), nn.ModuleList()
        for k in range(len(widths) - 2, 0, -1):
            self.reduce.append(convolution(widths[k + 1], widths[k], 1, 1))
            self.up.append(nn.Sequential(convolution(2 * widths[k], widths[k]), *([Residual(widths[k])] if k > 1 else [])))
        self.to_finest = convolution(widths[1], widths[0], 1, 1)
        self.head = convolution(2 * widths[0], head)
        self.answer = nn.Conv2d(head, 4 * len(PLANES), 1)
        # Most of a map is none of the tissues: begin there.
        nn.init.constant_(self.answer.bias, -3.0)

    def forward(self, features):
        x = finest = self.stem(features)
        skips = []
        for stage in self.down:
            x = stage(x)
            skips.append(x)
        x = self.bottom(x + self.overview(x.mean((2, 3), keepdim=True)))
        for reduce, up, skip in zip(self.reduce, self.up, skips[-2::-1]):
            x = up(torch.cat([twice(reduce(x)), skip], 1))
        x = self.head(torch.cat([twice(self.to_finest(x)), finest], 1))
        return F.pixel_shuffle(self.answer(x), 2)


def twice(x):
    return F.interpolate(x, scale_factor=2, mode='bilinear', align_corners=False)


def shape_of(stored):
    """Widths and head of a network from its stored weights."""
    levels = 1 + sum(name.startswith('down.') and name.endswith('.0.0.weight') for name in stored)
    widths = [stored['stem.0.weight'].shape[0]] + [stored[f'down.{k}.0.0.weight'].shape[0] for k in range(levels - 1)]
    return tuple(widths), stored['head.0.weight'].shape[0]
