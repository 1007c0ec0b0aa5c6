"""What each visible point of the toe is made of, and its colour in the camera's linear RGB relative to white paper."""

from types import SimpleNamespace

import torch

from draw import soft
from redness import blob, draw_redness, tip_redness
from spectra import look_up, melanin_for, skin_table

# ITA class bounds (Chardon 1991, Del Bino 2013); the ends reach beyond them so that extremes are trained too.
ITA_BOUNDS = ((55, 68), (41, 55), (28, 41), (10, 28), (-30, 10), (-62, -30))


def draw_ita(d):
    bounds = torch.tensor(ITA_BOUNDS, device=d.device).float()
    index = torch.randint(0, 6, (d.batch,), generator=d.generator, device=d.device)
    low, high = (bounds[:, k].gather(0, index)[:, None, None] for k in (0, 1))
    return index, low + (high - low) * d.uniform(0, 1)


def paint(image, colour, share):
    """Lay a colour [batch, 3] or [batch, 3, rows, columns] over the image where share says."""
    if colour.dim() == 2:
        colour = colour[:, :, None, None]
    return image + (colour - image) * share[:, None]


def colours(d, *bounds):
    """One random RGB per scene between bounds ((low, high) per channel)."""
    return torch.cat([d.uniform(low, high, 1) for low, high in bounds], 1)


def skin_fields(d, t, p, u, v, melanin0, blood0):
    """Melanin, resting blood and oxygenation per pixel of whole skin, with all that varies by nature."""
    fine = d.host_uniform(0.25, 1.0)
    pigment = d.uniform(0.01, 0.09) * d.cloud(fine) + d.uniform(0.02, 0.15) * d.cloud(5)
    knuckle = torch.exp(-((v - t.half_length - d.uniform(6, 20)) / d.uniform(2, 6)) ** 2)
    around_nail = torch.exp(-(p.distance.clamp_min(0) / d.uniform(0.8, 3)) ** 2)
    pigment = pigment + d.uniform(-0.1, 0.45) * knuckle + d.uniform(-0.2, 0.55) * around_nail * d.chance(0.5)
    spots = soft(d.noise(d.host_uniform(0.4, 1.6)) - d.uniform(2.2, 4.5), 0.12)
    pigment = pigment + d.uniform(0.2, 1.4) * spots * d.chance(0.45)
    stain = soft(blob(d, u, v, d.normal(6), d.uniform(-8, 25), d.uniform(1, 6)), 1.0)
    pigment = pigment + d.uniform(-0.3, 0.6) * stain * d.chance(0.2)
    melanin = melanin0 * torch.exp(pigment)
    blood = blood0 * torch.exp(tip_redness(d, t, u, v))
    oxygen = d.uniform(0.45, 0.9) - d.uniform(0, 0.35) * d.chance(0.12) + 0.05 * d.cloud(3)
    return melanin, blood, oxygen


def raw_fields(d, t, p, u, v):
    """Signed fields (millimetres, about; positive inside) of open bed and of proud tissue."""
    along = d.uniform(-1.3, 1.1) * t.half_length
    reach = d.log_uniform(1.0, 22)
    any_cut = torch.maximum(t.cut_left, t.cut_right)
    bed = torch.minimum(reach / 2 - (v - along).abs(), torch.minimum(p.cut, -p.distance) + d.uniform(-0.8, 0.5))
    bed = bed + 0.6 * d.uniform(0, 1) ** 2 * d.cloud(2.5)
    bed = torch.where((d.chance(0.68) * any_cut) > 0, bed, torch.full_like(bed, -9.0))
    bed = torch.minimum(bed, 0.4 + torch.minimum(p.cut, -p.distance) * 4)
    side = torch.where(t.cut_right > t.cut_left, 1.0, -1.0)
    proud = torch.full_like(bed, -9.0)
    for share in (0.3, 0.15):
        centre_u = t.nail_u + side * (t.hw + d.uniform(-1.5, 1.2))
        lump = blob(d, u, v, centre_u, t.half_length * d.uniform(-0.8, 1.0), d.uniform(0.5, 2.6))
        proud = torch.maximum(proud, torch.where(d.chance(share) * any_cut > 0, lump, proud))
    sore = blob(d, u, v, t.nail_u + d.normal(6), d.uniform(-8, 20), d.uniform(0.4, 2.0))
    proud = torch.maximum(proud, torch.where(d.chance(0.05) > 0, sore, proud))
    return bed, proud


def maceration_field(d, t, p, u, v):
    side = torch.where(d.chance(0.8) > 0, torch.where(t.cut_right > t.cut_left, 1.0, -1.0), d.sign())
    theta = torch.atan2(v, side * (u - t.nail_u))
    window = 1 - ((theta - d.uniform(-0.6, 1.4)) / d.uniform(0.3, 1.4)) ** 2
    wide = d.log_uniform(0.5, 4.0) * (1 + 0.3 * d.profile(theta)) * window
    field = torch.minimum(wide - p.distance, p.distance + d.uniform(0.0, 0.5)) + d.uniform(0, 0.4) * d.cloud(2.0)
    return torch.where(d.chance(0.28) > 0, field, torch.full_like(field, -9.0))


def nail_colour(d, t, p, u, v, table):
    """The plate over its bed: ridges, lunula, free edge, stains, sometimes polish."""
    pink = look_up(table, torch.full_like(u, 1e-3) * d.log_uniform(1, 40), d.log_uniform(0.002, 0.03) *
                   torch.exp(0.12 * d.cloud(3)), torch.full_like(u, 0.7))
    keratin = colours(d, (0.45, 0.85), (0.38, 0.78), (0.25, 0.68))
    image = paint(pink, keratin, (d.uniform(0.05, 0.5) + 0.04 * d.cloud(2)).clamp(0, 0.8).expand_as(u))
    lunula = 1 - torch.hypot((u - t.nail_u) / (t.hw * d.uniform(0.4, 0.9)), (v - t.half_length) / (t.half_length * d.uniform(0.2, 0.7)))
    image = paint(image, keratin * 1.05, soft(lunula, 0.08) * d.uniform(0, 0.6) * d.chance(0.6))
    edge = d.uniform(0.1, 4.0) - (v + t.half_length + d.normal(0.2) * torch.sin(u))
    image = paint(image, colours(d, (0.5, 0.95), (0.48, 0.9), (0.32, 0.8)), soft(edge, 0.15) * d.uniform(0.3, 0.95) * (p.cut < 0))
    ridges = d.streaks(d.host_uniform(0.15, 0.6))
    image = image * (1 + d.uniform(0, 0.06) * ridges)[:, None]
    bands = soft(d.streaks(1.4) - d.uniform(1.0, 3.0), 0.2) * d.uniform(0.2, 0.8) * d.chance(0.15)
    image = paint(image, colours(d, (0.05, 0.3), (0.03, 0.2), (0.02, 0.12)), bands)
    bruise = soft(blob(d, u, v, t.nail_u + d.normal(3), d.normal(3), d.uniform(1, 5)), 0.4) * d.uniform(0.3, 0.9) * d.chance(0.07)
    image = paint(image, colours(d, (0.02, 0.2), (0.01, 0.06), (0.01, 0.06)), bruise)
    yellow = soft(d.cloud(3) - d.uniform(0, 2), 0.4) * d.uniform(0, 0.7) * d.chance(0.12)
    image = paint(image, colours(d, (0.4, 0.7), (0.3, 0.55), (0.1, 0.3)), yellow)
    polish = d.chance(0.06) * soft(d.cloud(2.5) + d.uniform(-0.5, 3), 0.1)
    return paint(image, colours(d, (0.02, 0.9), (0.02, 0.8), (0.02, 0.8)), polish * d.uniform(0.5, 1))


def overlays(d, t, p, u, v, image):
    """Pus, crust, dried blood, iodine, ointment, ink: on top of everything, no outline of their own."""
    side = torch.where(t.cut_right > t.cut_left, 1.0, -1.0)
    near = lambda spread: blob(d, u, v, t.nail_u + side * (t.hw + d.normal(1.2)), t.half_length * d.uniform(-1, 1.4), d.uniform(*spread))
    rough = d.cloud(0.8)
    iodine = soft(blob(d, u, v, t.nail_u + d.normal(4), d.normal(6), d.uniform(4, 16)) + 1.5 * d.cloud(4), d.uniform(0.3, 2.5))
    strength = d.uniform(0.15, 1.4) * iodine * d.chance(0.1) * (1 + 0.3 * d.cloud(1.5)).clamp(0, 2)
    tint = torch.cat([d.uniform(0.02, 0.25, 1), d.uniform(0.4, 0.9, 1), d.uniform(1.2, 2.6, 1)], 1)[:, :, None, None]
    image = image * torch.exp(-strength[:, None] * tint)
    for chance, spread, bounds in ((0.13, (0.4, 2.2), ((0.45, 0.75), (0.4, 0.65), (0.12, 0.4))),
                                   (0.16, (0.4, 2.0), ((0.03, 0.2), (0.015, 0.09), (0.01, 0.06))),
                                   (0.13, (0.5, 3.0), ((0.06, 0.28), (0.01, 0.06), (0.01, 0.05))),
                                   (0.10, (0.4, 2.0), ((0.03, 0.2), (0.015, 0.09), (0.01, 0.06))),
                                   (0.04, (1.0, 5.0), ((0.6, 0.95), (0.6, 0.95), (0.55, 0.9)))):
        patch = soft(near(spread) + 0.5 * rough, 0.12) * d.uniform(0.5, 1) * d.chance(chance)
        image = paint(image, colours(d, *bounds) * 1.0, patch)
    specks = soft(d.noise(0.5) - d.uniform(2.3, 4), 0.15) * d.chance(0.12) * soft(3 - p.distance.abs(), 1)
    image = paint(image, colours(d, (0.03, 0.3), (0.01, 0.08), (0.01, 0.07)), specks * d.uniform(0.4, 1))
    ink = soft(0.35 - (blob(d, u, v, t.nail_u + d.normal(5), d.uniform(-4, 15), d.uniform(2, 9))).abs(), 0.12)
    return paint(image, colours(d, (0.02, 0.3), (0.02, 0.2), (0.1, 0.5)), ink * d.chance(0.03) * d.uniform(0.3, 0.9))


def draw_tissue(d, t, p, u, v, drop_mm):
    """Colour, wetness and labels of the toe at each visible point."""
    field = SimpleNamespace()
    table, ita_table = skin_table(d)
    field.ita_class, ita = draw_ita(d)
    blood0 = d.log_uniform(0.0022, 0.014)
    melanin0 = melanin_for(ita_table, blood0, ita)
    red = draw_redness(d, t, p, u, v, drop_mm)
    melanin, blood, oxygen = skin_fields(d, t, p, u, v, melanin0, blood0)
    image = look_up(table, melanin, blood + red.added, oxygen + d.uniform(-0.05, 0.2) * red.level)
    scaly = soft(d.cloud(1.0) - d.uniform(0.8, 3), 0.4) * d.uniform(0, 0.5) * d.chance(0.35)
    image = paint(image, colours(d, (0.5, 0.8), (0.45, 0.75), (0.35, 0.65)), scaly * d.uniform(0.1, 0.7))

    # The cuticle: a pale line on the fold's edge that is not soaked skin.
    cuticle = torch.exp(-((p.distance - d.uniform(-0.1, 0.4)) / d.uniform(0.12, 0.6)) ** 2)
    cuticle = cuticle * soft(d.cloud(2.8) + d.uniform(-0.5, 2), 0.4) * soft(v + t.half_length * 0.8, 0.5)
    image = paint(image, colours(d, (0.5, 0.85), (0.45, 0.8), (0.36, 0.72)), cuticle * d.uniform(0.05, 0.5) * d.chance(0.4))

    bed, proud = raw_fields(d, t, p, u, v)
    macerated = maceration_field(d, t, p, u, v)
    healed = look_up(table, melanin * d.uniform(0.15, 1), blood * d.log_uniform(0.7, 3), oxygen)
    groove = paint(healed, colours(d, (0.4, 0.75), (0.3, 0.6), (0.2, 0.5)), d.uniform(0, 0.4).expand_as(u))
    white = colours(d, (0.5, 0.88), (0.47, 0.86), (0.4, 0.8))
    soaked = soft(macerated, d.uniform(0.1, 0.4)) * d.uniform(0.3, 0.95) * (1 + 0.15 * d.cloud(0.7)).clamp(0, 1.2)
    image = paint(image, white, soaked.clamp(0, 1) * (1 - p.unit))
    image = image + (groove - image) * p.groove[:, None]
    image = image + (nail_colour(d, t, p, u, v, table) - image) * p.plate[:, None]
    beefy = look_up(table, torch.full_like(u, 1e-3), d.log_uniform(0.045, 0.35) * torch.exp(0.25 * d.cloud(0.9)),
                    d.uniform(0.3, 0.9).expand_as(u))
    beefy = beefy * d.uniform(0.7, 1.2)[:, None]
    slough = soft(d.cloud(1.3) - d.uniform(-0.3, 2.5), 0.3) * d.uniform(0.3, 0.95) * d.chance(0.45)
    beefy = paint(beefy, colours(d, (0.4, 0.75), (0.33, 0.62), (0.12, 0.4)), slough)
    open_share = torch.maximum(soft(bed, 0.15) * (p.unit * soft(p.cut)), soft(proud, 0.15))
    image = image + (beefy - image) * open_share[:, None]
    image = overlays(d, t, p, u, v, image)

    field.raw = torch.maximum(soft(bed) * p.groove, soft(proud)) * p.toe
    field.macerated = soft(macerated) * (1 - p.unit) * (1 - field.raw) * p.toe
    field.erythema = soft(red.inside_mm) * red.joined.float() * p.toe * (1 - p.unit) * (1 - field.raw) * (1 - field.macerated)
    field.excess = red.level * p.toe * (1 - p.unit) * (1 - field.raw)
    field.plateau, field.red = red.plateau, red
    field.wet = torch.maximum(open_share * d.uniform(0.2, 1), p.groove * d.uniform(0, 0.6))
    field.proud_mm = soft(proud, 0.4)
    return image, field
