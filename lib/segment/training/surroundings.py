"""What is around the toe: a calibration card of any design or none, and cloth, floor or other toes behind it."""

from types import SimpleNamespace

import torch

from draw import soft
from tissue import colours, paint


def draw_notch(d):
    n = SimpleNamespace()
    n.half = d.uniform(10.5, 18)
    n.top_power = d.uniform(1.8, 4.0)
    n.top_height = n.half * d.uniform(0.6, 1.2)
    n.flare = d.uniform(-0.05, 0.15)
    n.turn, n.shift_x, n.shift_y = d.normal(0.04), d.normal(0.7), d.normal(0.8)
    n.lower_edge = d.uniform(18, 60)
    n.absent = d.chance(0.14)
    return n


def notch_distance(n, x, y):
    """Millimetres into the card from the notch's cut; negative inside the notch."""
    c, s = torch.cos(n.turn), torch.sin(n.turn)
    a, b = c * (x - n.shift_x) + s * (y - n.shift_y), -s * (x - n.shift_x) + c * (y - n.shift_y)
    up = ((n.top_height - b) / n.top_height).clamp_min(0)
    half = n.half + n.flare * (b - n.top_height).clamp_min(0)
    ratio = ((a.abs() / half) ** n.top_power + up ** n.top_power).clamp_min(1e-6) ** (1 / n.top_power)
    return torch.minimum((ratio - 1) * torch.minimum(half, n.top_height), 60 + 0 * a), a, b


def rectangle(a, b, x0, y0, x1, y1):
    return torch.minimum(torch.minimum(a - x0, x1 - a), torch.minimum(b - y0, y1 - b))


def fiducial(d, a, b):
    """A black square with a random 4 x 4 pattern; returns where it prints black and where it prints white."""
    size = d.uniform(4, 11)
    x0, y0 = d.uniform(9, 20) * d.sign() - size / 2, d.uniform(-8, 40)
    column, row = ((a - x0) / size * 6).floor(), ((b - y0) / size * 6).floor()
    inner = ((column >= 1) & (column <= 4) & (row >= 1) & (row <= 4)).float()
    index = ((row - 1).clamp(0, 3) * 4 + (column - 1).clamp(0, 3)).long()
    bits = d.chance(0.5, 16)
    white = torch.gather(bits, 1, index.flatten(1)).view_as(a) * inner
    quiet = soft(rectangle(a, b, x0 - 1.2, y0 - 1.2, x0 + size + 1.2, y0 + size + 1.2))
    return soft(rectangle(a, b, x0, y0, x0 + size, y0 + size)) * (1 - white), quiet


def card_face(d, n, a, b, into):
    """Reflectance of the printed card relative to its own white."""
    image = torch.ones(d.batch, 3, d.height, d.width, device=d.device) * colours(d, (0.9, 1.06), (0.94, 1.05), (0.9, 1.06))[:, :, None, None]
    ink = colours(d, (0.01, 0.14), (0.01, 0.14), (0.01, 0.15))
    lines = soft(d.noise(0.35) - 0.2, 0.2) * soft(0.9 - (torch.remainder(b + d.uniform(0, 9), d.uniform(5, 14)) - 1).abs())
    image = paint(image, ink, lines * (soft(d.noise(7) - d.uniform(-0.5, 2.5), 0.05)) * d.chance(0.7))
    for _ in range(5):
        x0, y0 = d.uniform(-22, 18), d.uniform(-8, 45)
        patch = rectangle(a, b, x0, y0, x0 + d.uniform(2, 9), y0 + d.uniform(2, 9))
        grey = d.uniform(0.02, 1, 1).expand(d.batch, 3)
        colour = torch.where(d.chance(0.35, 1) > 0, colours(d, (0.01, 0.9), (0.01, 0.8), (0.01, 0.8)), grey)
        image = paint(image, colour, soft(patch) * d.chance(0.5))
    for _ in range(4):
        black, quiet = fiducial(d, a, b)
        on = d.chance(0.75)
        image = paint(image, torch.ones(d.batch, 3, device=d.device), quiet * on)
        image = paint(image, ink, black * on)
    ring = soft(0.12 - (into - d.uniform(0.4, 3)).abs(), 0.05) + soft(0.12 - (into - d.uniform(2, 6)).abs(), 0.05)
    return paint(image, colours(d, (0.2, 0.8), (0.2, 0.8), (0.2, 0.8)), ring.clamp(0, 1) * d.chance(0.6))


def stripes(d, x, y):
    """Wood, weave or ribbing: zero mean, about unit spread."""
    turn = d.uniform(0, 3.14)
    along = torch.cos(turn) * x + torch.sin(turn) * y
    across = -torch.sin(turn) * x + torch.cos(turn) * y
    period = d.log_uniform(0.5, 8)
    weave = torch.sin(6.283 * along / period + d.normal(2) * d.noise(6)) + d.chance(0.5) * torch.sin(6.283 * across / period)
    return weave * d.uniform(0, 1) + d.cloud(d.host_uniform(0.6, 6)) * d.uniform(0, 1)


def background(d, x, y, skin_rgb):
    """Everything below the card and the toe, dark in the gap, with other toes of the same foot."""
    base = colours(d, (0.02, 0.9), (0.02, 0.85), (0.02, 0.85))
    red_cloth = d.chance(0.08, 1)
    base = torch.where(red_cloth > 0, colours(d, (0.2, 0.7), (0.01, 0.15), (0.01, 0.15)), base)
    grey = d.chance(0.5, 1)
    base = torch.where(grey > 0, base.mean(1, keepdim=True) * d.uniform(0.85, 1.15, 3), base)
    texture = torch.exp(d.uniform(0, 0.35) * stripes(d, x, y) + d.uniform(0, 0.15) * d.cloud(0.5))
    image = base[:, :, None, None] * texture[:, None]
    for side in (-1.0, 1.0):
        centre = side * d.uniform(14, 26) + d.normal(0.15) * (y - 30)
        half = d.uniform(5, 11)
        tip = d.uniform(-5, 44)
        end = ((tip + half - y) / half).clamp(0, 1)
        round_half = half * (1 - end ** 2).clamp_min(1e-3).sqrt()
        ratio = ((x - centre) / round_half).abs().clamp(max=1)
        shade = (1 - ratio ** 2).clamp_min(0.02) ** d.uniform(0.1, 0.5) * d.uniform(0.4, 1.1)
        shade = shade * torch.exp(d.uniform(0, 0.15) * d.cloud(1.7))
        inside = torch.minimum(round_half - (x - centre).abs(), y - tip)
        tone = skin_rgb * torch.exp(d.normal(0.05, 3)) * d.uniform(0.7, 1.2, 1)
        image = paint(image, tone[:, :, None, None] * shade[:, None], soft(inside, 0.3) * d.chance(0.55))
    return image
