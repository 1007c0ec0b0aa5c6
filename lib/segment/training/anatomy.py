"""
The shape of one toe per scene: outline, nail unit, cut, folds, and its height over the card plane.

Toe frame, millimetres: u across (right positive), v down toward the ankle, origin in the middle of the nail unit.
Everything is a function of (u, v), so that it can be read off on the height grid and again where a ray meets the toe.
"""

import math
from types import SimpleNamespace

import torch

from draw import soft

def draw_toe(d):
    """Numbers that describe the toes of one batch, each [batch, 1, 1]."""
    t = SimpleNamespace()
    t.half_width = d.uniform(7.5, 14.5)
    t.hw = (t.half_width * d.uniform(0.44, 0.82)).clamp(3.8, 9.5)
    t.half_length = (t.hw * d.uniform(0.72, 1.5)).clamp(4.0, 9.5)
    t.cap_length = d.uniform(4, 14)
    t.tip_v = -t.half_length - d.uniform(-1.5, 6)
    t.cap_power = d.uniform(1.7, 3.0)
    t.thickness = d.uniform(6, 14)
    t.section_power = d.uniform(1.7, 3.6)
    t.section_root = d.uniform(1.6, 3.0)
    t.waist = [(d.normal(0.035), d.uniform(18, 60), d.uniform(0, 6.28)) for _ in range(3)]
    t.lean = d.normal(0.05)
    t.tip_drop = d.uniform(1, 8)
    t.nail_u = d.normal(0.6)
    # Nail unit: a rounded box; the proximal end is a bow.
    t.proximal_radius = (t.hw * d.uniform(0.25, 0.95)).clamp_min(1.2)
    t.distal_radius = d.uniform(0.2, 2.5)
    t.proximal_bow = d.uniform(-0.5, 2.5)
    t.distal_bow = d.uniform(-1.2, 2.5)
    t.taper = d.normal(0.10)
    t.wander = [(d.normal(0.18), d.uniform(0.25, 1.0), d.uniform(0, 6.28)) for _ in range(2)]
    t.transverse_sink = d.uniform(-0.2, 0.9)
    t.plate_flat = d.uniform(0.5, 1.3)
    t.rim_height, t.rim_width = d.uniform(0, 1.3), d.uniform(0.6, 2.5)
    t.rim_wave = [(d.normal(0.25), k) for k in (1, 2, 3)]
    roll = d.uniform(0, 1)
    t.cut_left = ((roll > 0.14) & (roll < 0.62)).float()
    t.cut_right = (roll > 0.52).float()
    t.strip = [d.uniform(0.4, 4.0) * (1 - 0.7 * d.chance(0.15)) for _ in range(2)]
    t.strip_lean = [d.normal(0.07) for _ in range(2)]
    t.strip_wander = [(d.normal(0.12), d.uniform(0.4, 2.2), d.uniform(0, 6.28)) for _ in range(2)]
    # Swelling of the treated folds knows nothing of their redness.
    t.swelling = [d.uniform(0, 2.6) * d.chance(0.55) for _ in range(2)]
    t.swelling_width = d.uniform(1.0, 4.0)
    t.groove_depth = d.uniform(0.0, 1.3)
    t.missing = d.chance(0.03)
    t.plate_gone = d.chance(0.03)
    # Pose over the card.
    t.yaw = d.normal(math.radians(5))
    t.pitch, t.roll = d.normal(0.09), d.normal(0.10)
    t.shift_x, t.shift_y = d.normal(1.6), d.uniform(-2, 8)
    t.lift = d.normal(2.6).clamp(-7, 6)
    return t


def to_toe(t, x, y):
    """Card millimetres (notch frame) to the toe frame."""
    dx, dy = x - t.shift_x, y - (t.shift_y - t.tip_v)
    c, s = torch.cos(t.yaw), torch.sin(t.yaw)
    return c * dx + s * dy, -s * dx + c * dy


def outline(t, u, v):
    """Half width of the toe at v and how deep (u, v) lies inside its outline, millimetres, about."""
    cap = ((t.tip_v + t.cap_length - v) / t.cap_length).clamp(0, 1)
    full = 1 + sum(a * torch.cos(6.283 * v / wave + phase) for a, wave, phase in t.waist)
    narrowing = (1 - cap ** t.cap_power).clamp_min(1e-4) ** (1 / t.cap_power)
    half = t.half_width * full * narrowing
    centred = u - t.lean * v
    inside = torch.minimum(half - centred.abs(), (v - t.tip_v) * 1.0)
    return half, centred, cap, inside


def unit_distance(t, u, v):
    """Signed distance to the nail unit's border, negative inside (rounded box with bowed ends), and local half width."""
    a = (u - t.nail_u) / t.hw
    lift = torch.where(v > 0, t.proximal_bow, t.distal_bow) * (a * a).clamp(max=1.5)
    along = v + torch.where(v > 0, lift, -lift) * 1.0
    half = t.hw * (1 - t.taper * v / t.half_length)
    half = half + sum(w * torch.sin(f * v + p) for w, f, p in t.wander)
    radius = torch.where(v > 0, torch.minimum(t.proximal_radius, half * 0.98), t.distal_radius)
    across = (u - t.nail_u).abs() - (half - radius)
    end = along.abs() - (t.half_length - radius)
    far = torch.hypot(across.clamp_min(0) + 1e-6, end.clamp_min(0) + 1e-6)
    return far + torch.maximum(across, end).clamp_max(0) - radius, half


def cut_distance(t, u, v, index):
    """Positive on the removed strip of side 0 (left) or 1 (right), millimetres from the cut edge; about."""
    side = (-1.0, 1.0)[index]
    wave, frequency, phase = t.strip_wander[index]
    edge = t.hw - t.strip[index] + t.strip_lean[index] * v + wave * torch.sin(frequency * v + phase)
    cut = (t.cut_left, t.cut_right)[index]
    return torch.where(cut > 0, side * (u - t.nail_u) - edge, torch.full_like(u, -20.0))


def parts(t, u, v):
    """Soft masks and signed distances of the nail's parts at (u, v)."""
    p = SimpleNamespace()
    p.distance, p.half = unit_distance(t, u, v)
    p.cut = torch.maximum(cut_distance(t, u, v, 0), cut_distance(t, u, v, 1))
    p.half_toe, p.centred, p.cap, p.inside = outline(t, u, v)
    p.unit = soft(-p.distance)
    p.groove = p.unit * soft(p.cut)
    p.plate = p.unit * soft(-p.cut) * (1 - t.plate_gone)
    p.toe = torch.maximum(soft(p.inside), p.plate) * (1 - t.missing)
    p.angle = torch.atan2(v, u - t.nail_u)
    return p


def height(t, u, v, floor, relief, shifted):
    """Height over the card plane of the toe, or of what lies behind it, millimetres."""
    p = parts(t, u, v)
    ratio = (p.centred / p.half_toe.clamp_min(0.05)).abs().clamp(max=1)

    def section(r):
        if shifted:
            return 0.5 - 0.5 * torch.cos(math.pi * r.clamp(max=1) ** (t.section_power / 2))
        return 1 - (1 - r ** t.section_power).clamp_min(1e-5) ** (1 / t.section_root)

    top = -t.tip_drop * (1 - (1 - p.cap ** 2).clamp_min(1e-5).sqrt())
    skin = top - t.thickness * section(ratio)
    edge_drop = t.thickness * section((t.hw / t.half_width).clamp(max=0.95)) + t.transverse_sink
    across = ((u - t.nail_u) / t.hw).clamp(-1.3, 1.3)
    nail = top - edge_drop * across.abs() ** 2 * t.plate_flat
    rim = 1 + sum(a * torch.cos(k * p.angle) for a, k in t.rim_wave)
    bulge = t.rim_height * rim
    for index, cut in ((0, t.cut_left), (1, t.cut_right)):
        side = (-1.0, 1.0)[index]
        near = torch.sigmoid((side * (u - t.nail_u) - 0.5 * t.hw) / 1.0)
        bulge = bulge + cut * t.swelling[index] * near
    reach = torch.where(bulge > t.rim_height, t.swelling_width, t.rim_width)
    outside = p.distance.clamp_min(0)
    not_distal = torch.sigmoid((v + t.half_length * 0.9) / 1.0)
    skin = skin + bulge * torch.exp(-(outside / reach) ** 2) * not_distal
    surface = skin * (1 - p.unit) + nail * p.unit - t.groove_depth * p.groove
    surface = surface + relief * (1 - p.plate * 0.9)
    present = (torch.maximum((p.inside > 0).float(), (p.plate > 0.5).float()) > 0) & (t.missing < 0.5)
    posed = surface + t.pitch * v + t.roll * u + t.lift
    return torch.where(present, posed, floor)
