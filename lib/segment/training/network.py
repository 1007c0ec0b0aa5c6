"""A small U-Net: half-resolution trunk, one pooled view of the whole map, a thin full-resolution head."""

import torch
from torch import nn
import torch.nn.functional as F

from features import CHANNELS, PLANES


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
    """features [batch, 8, rows, columns] to logits [batch, planes, rows, columns]; rows and columns divide by 32."""

    def __init__(self, widths=(24, 40, 64, 88, 112), head=14):
        super().__init__()
        self.widths, self.head_width = widths, head
        self.stem = convolution(len(CHANNELS), widths[0], 2, 5)
        self.down = nn.ModuleList()
        for k, width in enumerate(widths):
            entry = convolution(widths[k - 1], width, 2) if k else nn.Identity()
            self.down.append(nn.Sequential(entry, Residual(width)))
        deepest = widths[-1]
        self.overview = nn.Sequential(nn.Conv2d(deepest, deepest // 2, 1), nn.ReLU(), nn.Conv2d(deepest // 2, deepest, 1))
        self.bottom = Residual(deepest)
        self.reduce, self.up = nn.ModuleList(), nn.ModuleList()
        for k in range(len(widths) - 2, -1, -1):
            self.reduce.append(convolution(widths[k + 1], widths[k], 1, 1))
            self.up.append(nn.Sequential(convolution(2 * widths[k], widths[k]), *([Residual(widths[k])] if k > 0 else [])))
        self.to_full = convolution(widths[0], head, 1, 1)
        self.head = convolution(head + len(CHANNELS), head + 2)
        self.answer = nn.Conv2d(head + 2, len(PLANES), 1)
        # Most of a map is none of the tissues: begin there.
        nn.init.constant_(self.answer.bias, -3.0)

    def forward(self, features):
        x = self.stem(features)
        skips = []
        for stage in self.down:
            x = stage(x)
            skips.append(x)
        x = self.bottom(x + self.overview(x.mean((2, 3), keepdim=True)))
        for reduce, up, skip in zip(self.reduce, self.up, skips[-2::-1]):
            x = F.interpolate(reduce(x), scale_factor=2, mode='bilinear', align_corners=False)
            x = up(torch.cat([x, skip], 1))
        x = F.interpolate(self.to_full(x), scale_factor=2, mode='bilinear', align_corners=False)
        return self.answer(self.head(torch.cat([x, features], 1)))


class Answer(nn.Module):
    """The network as it is shipped: probabilities instead of logits."""

    def __init__(self, network):
        super().__init__()
        self.network = network

    def forward(self, features):
        return torch.sigmoid(self.network(features))
