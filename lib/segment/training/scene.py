"""One batch of millimetre maps with their exact labels."""

from types import SimpleNamespace

import torch

from anatomy import draw_toe, height, parts, to_toe
from camera import photograph
from draw import Draw, grid_mm, soft
from features import PLANES
from shading import (MARGIN_MM, BOTTOM_MM, draw_light, draw_view, highlight, illuminate, sample, see, surface_texture)
from surroundings import background, card_face, draw_notch, notch_distance
from tissue import colours, draw_tissue, paint


def relief_of(d, t, u, v):
    """Fine skin relief and the creases over the knuckle, millimetres."""
    size = (u.shape[1], u.shape[2])
    relief = 0.035 * d.uniform(0, 1) ** 2 * d.noise(0.35, size=size) + 0.05 * d.uniform(0, 1) ** 2 * d.noise(1.1, size=size)
    relief = relief + d.uniform(0, 0.25) * d.noise(6, size=size)
    knuckle = t.half_length + d.uniform(5, 20)
    for _ in range(5):
        line = v - knuckle - d.normal(3.5) - d.normal(0.6) * torch.sin(u * d.uniform(0.1, 0.6) + d.uniform(0, 6.28)) - d.normal(0.01) * u * u
        taper = torch.exp(-((u - d.normal(2)) / d.uniform(4, 12)) ** 2)
        relief = relief - d.uniform(0, 0.35) * d.chance(0.8) * torch.exp(-(line / d.uniform(0.12, 0.6)) ** 2) * taper
    return relief


def hairs(d, strands=40, beads=48):
    """Thin curved strokes, 0...1, on some toes."""
    count = d.uniform(0, 1, strands) < d.uniform(0, 1, 1) * d.chance(0.4, 1)
    place = torch.linspace(0, 1, beads, device=d.device)
    s = d.px_per_mm
    turn = d.uniform(0, 6.28, strands, 1) * 0.3 + d.uniform(0, 6.28, 1, 1)
    turn = turn + d.normal(1.0, strands, 1) * place
    length = d.uniform(1.5, 7, strands, 1) * s / beads
    x = d.uniform(0.25, 0.75, strands, 1) * d.width + torch.cumsum(torch.cos(turn), 2) * length
    y = d.uniform(0.35, 0.95, strands, 1) * d.height + torch.cumsum(torch.sin(turn), 2) * length
    x, y = x.clamp(0, d.width - 1.01), y.clamp(0, d.height - 1.01)
    canvas = torch.zeros(d.batch, d.height * d.width, device=d.device)
    for dx in (0, 1):
        for dy in (0, 1):
            weight = (1 - (x - x.floor() - dx).abs()) * (1 - (y - y.floor() - dy).abs())
            index = ((y.floor() + dy).clamp(max=d.height - 1) * d.width + (x.floor() + dx).clamp(max=d.width - 1)).long()
            canvas.scatter_add_(1, index.flatten(1), (weight * count[:, :, None].float()).flatten(1))
    return canvas.view(d.batch, d.height, d.width).clamp(0, 1)


def shadow_edges(d, x, y):
    """Shadows of hand, phone or window frame across the whole picture, and a slow gradient that shading missed."""
    factor = torch.ones(d.batch, 3, d.height, d.width, device=d.device)
    for chance in (0.35, 0.12):
        turn = d.uniform(0, 6.28)
        distance = torch.cos(turn) * x + torch.sin(turn) * (y - 18) - d.normal(8) + d.normal(1.0) * torch.sin(0.2 * x + d.uniform(0, 6.28))
        depth = d.uniform(0.08, 0.6) * d.chance(chance)
        tint = torch.exp(d.normal(0.08, 3, 1, 1))
        inside = torch.sigmoid(distance / d.log_uniform(0.08, 5))
        factor = factor * (1 - (1 - (1 - depth)[:, None] * tint.clamp(0.7, 1.4)).clamp(-0.1, 0.9) * (inside * (depth > 0))[:, None])
    slow = d.normal(0.006) * x + d.normal(0.006) * (y - 20) + d.normal(0.0002) * x * x
    colour_slow = d.normal(0.0015, 3, 1, 1) * x[:, None] + d.normal(0.0015, 3, 1, 1) * (y - 20)[:, None]
    return factor * torch.exp(slow[:, None] + colour_slow)


def margin_line(t, p, u, v):
    """A soft line along the border of the nail unit on each treated side, distal end to mid proximal fold."""
    side = torch.sign(u - t.nail_u)
    treated = torch.where(side < 0, t.cut_left, t.cut_right)
    line = torch.exp(-(p.distance / 0.35) ** 2)
    distal = soft(v + t.half_length - 0.9, 0.15)
    return line * treated * distal


def compose(d):
    """Returns reflectance before the camera, distance from focus, targets in the order of PLANES, facts of each scene."""
    shifted = d.shifted
    t, view, light, notch = draw_toe(d), draw_view(d), draw_light(d), draw_notch(d)
    wide_x, wide_y = grid_mm(d, MARGIN_MM)
    wide_u, wide_v = to_toe(t, wide_x, wide_y)
    floor = torch.maximum(d.uniform(-15, -8), torch.full_like(t.lift, BOTTOM_MM + 0.5))
    heights = height(t, wide_u, wide_v, floor, relief_of(d, t, wide_u, wide_v), shifted)[:, None]
    x, y = grid_mm(d)
    surface_x, surface_y, z = see(d, heights, view)
    u, v = to_toe(t, surface_x, surface_y)
    p = parts(t, u, v)

    into, a, b = notch_distance(notch, x, y)
    on_card = soft(into) * soft(notch.lower_edge - b) * (1 - notch.absent) * (z <= 0.02).float()
    # On steep sides the ray may end just outside the outline.
    p.toe = torch.maximum(p.toe, soft(p.inside + 0.3) * (1 - t.missing)) * (z > floor + 0.3).float() * (1 - on_card)
    for name in ('unit', 'groove', 'plate'):
        setattr(p, name, getattr(p, name) * (p.toe > 0.02).float() * (1 - on_card))

    top = sample(heights, t.shift_x + 0 * x, surface_y)[:, 0]
    drop = (top - z - t.roll * u).clamp(0, 14) * torch.sigmoid((u - t.nail_u).abs() - 1)
    image, field = draw_tissue(d, t, p, u, v, drop)
    texture = surface_texture(d, heights)
    rough = 0.3 * d.uniform(0, 1) ** 2
    bumps = [rough * d.noise(0.3) * (1 - p.plate), rough * d.noise(0.35) * (1 - p.plate)]
    shine, normal = illuminate(d, texture, surface_x, surface_y, z, light, bumps)
    # Below the card, light comes past the notch only.
    slide = (-z).clamp_min(0) / light.z
    behind, _, far_b = notch_distance(notch, surface_x + light.x * slide, surface_y + light.y * slide)
    shut = soft(behind - 0.1, 0.3 + 0.08 * slide) * soft(notch.lower_edge - far_b, 0.5) * (1 - notch.absent) * (z < 0).float()
    shine = shine * (1 - d.uniform(0.2, 0.9) * (1 - light.sky) * shut)[:, None]
    image = image * (shine * d.uniform(0.75, 1.3)[:, None] ** (1 - d.chance(0.5)[:, None]))
    veil = d.uniform(0.0, 0.015) * (1 - p.plate) + p.plate * d.uniform(0.0, 0.06)
    image = image + (veil * shine.mean(1))[:, None]
    gloss = highlight(light, view, normal, d.log_uniform(8, 60))
    nail_gloss = highlight(light, view, normal, d.log_uniform(20, 400))
    shiny = gloss * d.uniform(0, 0.12) + nail_gloss * (p.plate * d.uniform(0, 0.9) * d.chance(0.7) + field.wet * d.uniform(0, 0.9))
    image = image + (shiny * (0.4 + 0.6 * shine.mean(1)))[:, None]
    strands = hairs(d) * soft(p.distance - 1.0, 0.3)
    image = paint(image, colours(d, (0.01, 0.3), (0.01, 0.22), (0.005, 0.15)), strands * d.uniform(0.3, 1.0))

    skin_rgb = (image * p.toe[:, None]).sum((2, 3)) / p.toe.sum((1, 2))[:, None].clamp_min(1)
    behind_all = background(d, surface_x, surface_y, torch.where(p.toe.sum((1, 2))[:, None] > 50, skin_rgb, colours(d, (0.1, 0.5), (0.05, 0.4), (0.03, 0.3))))
    gap = torch.exp(-d.uniform(0, 0.2) * (-floor)) * (1 - 0.6 * shut)
    near_toe = 1 - d.uniform(0, 0.7) * torch.exp(-((-p.inside).clamp_min(0) / d.uniform(1, 6)))
    image = paint(behind_all * (gap * near_toe)[:, None], image, p.toe)
    image = paint(image, card_face(d, notch, a, b, into), on_card)
    image = image * shadow_edges(d, x, y)

    focus = (z - d.uniform(-3, 1)).abs() / d.uniform(8, 40)
    planes = dict(toe=p.toe, nailPlate=p.plate, groove=p.groove, raw=field.raw, macerated=field.macerated,
                  erythema=field.erythema, nailUnit=p.unit, foldMarginTreated=margin_line(t, p, u, v) * p.toe,
                  excess=field.excess)
    targets = torch.stack([planes[name] for name in PLANES], 1).clamp(0, 1)
    facts = SimpleNamespace(ita_class=field.ita_class, plateau=field.plateau.flatten(), edge_mm=field.red.edge_mm.flatten(),
                            tilt=view.tilt.flatten(), cut_left=t.cut_left.flatten(), cut_right=t.cut_right.flatten())
    return torch.nan_to_num(image, 0.1, 2.0, 0.0), focus, targets, facts


def shoot(d, image, focus, targets):
    """One photo of the composed scenes: map, `seen`, and targets where the photo reaches."""
    photo, seen, keep = photograph(d, image, focus)
    return photo, seen, targets * keep[:, None]


def render(batch, seed, device='cpu', px_per_mm=8, shifted=False):
    """Returns the maps as a camera gave them, `seen`, targets in the order of PLANES, and facts about each scene."""
    d = Draw(batch, device, seed, px_per_mm, shifted)
    image, focus, targets, facts = compose(d)
    return *shoot(d, image, focus, targets), facts
