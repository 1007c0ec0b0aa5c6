"""
Where blood was added to the skin: regions in unrolled skin coordinates with an exact half-level line, on the treated
fold, and the misleading ones (other fold, back of the toe, tip), drawn independently of everything else.
"""

import math
from types import SimpleNamespace

import torch
import torch.nn.functional as F

from draw import soft

TEN_TO_NINETY = 2 * math.log(9)
RAMP_TEN_TO_NINETY = 0.76


def unrolled_across(t, u, drop_mm):
    """Arc length across the toe, about: the way sideways plus most of the way down."""
    return u + torch.sign(u - t.nail_u) * 0.72 * drop_mm


def band(d, t, s, v, distance, side):
    """Millimetres inside a band of changing width along the fold on one side; negative outside."""
    theta = torch.atan2(v, side * (s - t.nail_u))
    centre, spread = d.uniform(-0.5, 1.5), d.uniform(0.3, 1.7)
    window = 1 - ((theta - centre) / spread) ** 2
    width = d.log_uniform(0.9, 7.5) * (1 + 0.22 * d.profile(theta))
    return torch.where(window > -1, width * window, -width) - distance.clamp_min(0) - 0.3 * (window < 0).float()


def blob(d, s, v, centre_s, centre_v, radius):
    """Millimetres inside an irregular ellipse."""
    turn = d.uniform(0, math.pi)
    ds, dv = s - centre_s, v - centre_v
    a = torch.cos(turn) * ds + torch.sin(turn) * dv
    b = -torch.sin(turn) * ds + torch.cos(turn) * dv
    stretch = d.log_uniform(0.55, 1.8)
    away = torch.hypot(a / stretch.sqrt(), b * stretch.sqrt())
    edge = radius * (1 + 0.16 * d.profile(torch.atan2(b, a)))
    return edge - away


def tongue(d, t, s, v, side):
    """Millimetres inside a strip that leaves the proximal corner toward the ankle."""
    start_s, start_v = t.nail_u + side * t.hw * d.uniform(0.3, 1.3), t.half_length * d.uniform(0.4, 1.0)
    length, drift = d.log_uniform(3, 18), side * d.normal(0.3)
    radius = d.log_uniform(0.6, 3.0)
    share = ((v - start_v) / length).clamp(0, 1)
    away = torch.hypot(s - start_s - drift * share * length + d.normal(0.5) * torch.sin(3 * share), v - start_v - share * length)
    return radius * (1 - 0.6 * share) - away


def one_side(d, t, s, v, distance, side):
    """The union of a band, spots at the fold and a tongue, each there or not."""
    absent = torch.full_like(s, -9.0)
    kind = d.uniform(0, 1)
    pieces = [torch.where(kind < 0.75, band(d, t, s, v, distance, side), absent)]
    for share in (0.55, 0.25):
        centre_s = t.nail_u + side * (t.hw + d.uniform(-0.5, 2.5))
        corner = blob(d, s, v, centre_s, t.half_length * d.uniform(-0.9, 1.3), d.log_uniform(0.8, 6.5))
        pieces.append(torch.where((kind > 0.7) | (d.uniform(0, 1) < share * 0.6), corner, absent))
    pieces.append(torch.where(d.chance(0.25) > 0, tongue(d, t, s, v, side), absent))
    return torch.logsumexp(torch.stack(pieces) / 0.35, 0) * 0.35


def level_of(d, inside_mm, width_mm):
    """
    Share of the plateau, 0...1, one half on the outline, with edges of two shapes; and how wide they are from 10 to 90 %,
    in millimetres across the unwarped outline: width_mm for the smooth one, 0.76 of it for the ramp.
    """
    smooth = torch.sigmoid(TEN_TO_NINETY * inside_mm / width_mm)
    ramp = (0.5 + 0.8 * inside_mm / width_mm).clamp(0, 1)
    ramp = ramp * ramp * (3 - 2 * ramp)
    pick = d.chance(0.85 if d.shifted else 0.3)
    return smooth * (1 - pick) + ramp * pick, width_mm * (1 - pick + RAMP_TEN_TO_NINETY * pick)


def joined(region, seed, steps=44):
    """The parts of a region that hang together with the seed; grown on a grid four times coarser."""
    small = F.max_pool2d(region[:, None].float(), 4)
    grown = F.max_pool2d((region & seed)[:, None].float(), 4)
    for _ in range(steps):
        grown = F.max_pool2d(grown, 3, 1, 1) * small
    return F.interpolate(grown, scale_factor=4, mode='nearest')[:, 0] > 0.5


def draw_redness(d, t, p, u, v, drop_mm):
    """
    Returns level (all added blood, share of its plateau), joined (the half-level region on a treated fold), the added
    blood fraction per pixel, and what was drawn.
    """
    r = SimpleNamespace()
    warp_scale, warp, ragged = d.host_uniform(2.5, 8), d.uniform(0, 1.1), 0.5 * d.uniform(0, 1) ** 3
    s = unrolled_across(t, u, drop_mm) + warp * d.noise(warp_scale) + ragged * d.cloud(1.7)
    w = v + warp * d.noise(warp_scale) + ragged * d.cloud(1.7)
    distance = p.distance + (unrolled_across(t, u, drop_mm) - u).abs() + 0.4 * warp * d.noise(warp_scale)
    r.plateau = d.log_uniform(0.009, 0.045)
    treated = [t.cut_left, t.cut_right]
    nothing_cut = 1 - torch.maximum(t.cut_left, t.cut_right)
    present, region_mm = [], None
    width = d.log_uniform(0.7, 4.2)
    for index, side in ((0, -1.0), (1, 1.0)):
        is_treated = torch.maximum(treated[index], nothing_cut * d.chance(0.4))
        on = is_treated * d.chance(0.72) + (1 - is_treated) * d.chance(0.16)
        inside = one_side(d, t, s, w, distance, side)
        inside = torch.where(on > 0, inside, torch.full_like(inside, -9.0))
        region_mm = inside if region_mm is None else torch.maximum(region_mm, inside)
        present.append(on)
    far = blob(d, s, w, t.nail_u + d.normal(6), d.uniform(4, 34), d.log_uniform(1.2, 8))
    far_on = d.chance(0.22)
    region_mm = torch.maximum(region_mm, torch.where(far_on > 0, far, torch.full_like(far, -9.0)))
    # An edge cannot be softer than its region is wide.
    thickest = torch.where(p.toe > 0.5, region_mm, torch.full_like(region_mm, -9.0)).amax((1, 2), keepdim=True)
    width = torch.minimum(width, 1.3 * thickest.clamp_min(0.5))
    r.level, r.edge_mm = level_of(d, region_mm, width)
    side_of = torch.sign(u - t.nail_u)
    near_side = (torch.where(side_of < 0, torch.maximum(t.cut_left, nothing_cut), torch.maximum(t.cut_right, nothing_cut)) > 0)
    fold = (p.distance < 1.0) & (p.distance > -0.6) & near_side & (v > -t.half_length) & (p.toe > 0.5)
    r.joined = joined((region_mm > 0) & (p.toe > 0.5), fold)
    r.inside_mm, r.present, r.far_on = region_mm, torch.maximum(*present), far_on
    r.added = r.plateau * r.level * (1 + d.uniform(0, 0.25) * d.cloud(1.2)).clamp(0.4, 1.6)
    return r


def tip_redness(d, t, u, v):
    """Broad natural redness: tip, knuckle, mottling; log factor on resting blood."""
    tip = d.normal(0.35) * torch.sigmoid((t.tip_v + d.uniform(2, 12) - v) / d.uniform(1, 4))
    knuckle_v = t.half_length + d.uniform(6, 20)
    knuckle = d.uniform(-0.1, 0.5) * torch.exp(-((v - knuckle_v) / d.uniform(2, 6)) ** 2)
    sideways = d.normal(0.02) * u
    mottle_scale = d.host_uniform(0.6, 4)
    rubbed = d.uniform(0, 0.9) * d.chance(0.12) * soft(blob(d, u, v, d.normal(3), knuckle_v, d.uniform(1, 5)), 0.8)
    return tip + knuckle + sideways + d.uniform(0.03, 0.2) * d.cloud(mottle_scale) + d.uniform(0, 0.15) * d.cloud(9) + rubbed
