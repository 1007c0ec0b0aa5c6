"""
Skin, light and camera as spectra: from melanin and blood to what a camera says, relative to white paper.

Absorption: melanosome and baseline after Jacques (Oregon Medical Laser Center, 1998), haemoglobin after Prahl's
compilation. Reflectance of the dermis: diffusion theory for a half space (Flock et al., 1989); the epidermis is a
filter that light passes twice. The shifted setting uses a plain absorbance sum (modified Beer-Lambert) instead.
"""

import math

import torch

NM = torch.arange(400, 701, 10).float()

# Molar extinction cm-1/M every 10 nm, 400...700 nm. 450...700 as tabulated by Prahl; below 450 rounded, from memory.
HBO2 = torch.tensor([266232, 466840, 480360, 246072, 102580, 62816, 44480, 33209.2, 26629.2, 23684.4, 20932.8, 20035.2,
                     24202.4, 39956.8, 53236, 43016, 32613.2, 44496, 50104, 14400.8, 3200, 1506, 942, 610, 442, 368,
                     319.6, 294, 277.6, 276, 290])
HB = torch.tensor([223296, 303956, 407560, 528600, 413280, 103292, 23388.8, 16156.4, 14550, 16684, 20862, 25773.6,
                   31589.6, 39036.4, 46592, 53412, 53788, 45072, 37020, 28324.4, 14677.2, 9443.6, 6509.6, 5148.8,
                   4345.2, 3750.12, 3226.56, 2795.12, 2407.92, 2051.96, 1794.28])
D65 = torch.tensor([82.75, 91.49, 93.43, 86.68, 104.86, 117.01, 117.81, 114.86, 115.92, 108.81, 109.35, 107.80, 104.79,
                    107.69, 104.41, 104.05, 100.00, 96.33, 95.79, 88.69, 90.01, 89.60, 87.70, 83.29, 83.70, 80.03,
                    80.21, 82.28, 78.28, 69.72, 71.61])
XYZ_TO_SRGB = torch.tensor([[3.2404542, -1.5371385, -0.4985314], [-0.9692660, 1.8760108, 0.0415560],
                            [0.0556434, -0.2040259, 1.0572252]])
# 2.303 * 150 g/l / 64,500 g/mol: whole blood, cm-1 per unit of molar extinction.
BLOOD_PER_EXTINCTION = 2.303 * 150 / 64500

MELANIN_STEPS, BLOOD_STEPS, OXYGEN_STEPS = 20, 32, 4
MELANIN_RANGE, BLOOD_RANGE, OXYGEN_RANGE = (1e-3, 0.9), (3e-4, 0.5), (0.2, 1.0)


def lobe(nm, centre, below, above):
    return torch.exp(-0.5 * ((nm - centre) / torch.where(nm < centre, below, above)) ** 2)


def colour_matching():
    """CIE 1931 2 degree observer, the multi-lobe fit of Wyman, Sloan and Shirley (2013)."""
    def g(centre, below, above):
        return lobe(NM, torch.tensor(centre), torch.tensor(below), torch.tensor(above))
    x = 1.056 * g(599.8, 37.9, 31.0) + 0.362 * g(442.0, 16.0, 26.7) - 0.065 * g(501.1, 20.4, 26.2)
    y = 0.821 * g(568.8, 46.9, 40.5) + 0.286 * g(530.9, 16.3, 31.1)
    z = 1.217 * g(437.0, 11.8, 36.0) + 0.681 * g(459.0, 26.0, 13.8)
    return torch.stack([x, y, z])


def steps(bounds, count, device):
    return torch.exp(torch.linspace(math.log(bounds[0]), math.log(bounds[1]), count, device=device))


def skin_reflectance(draw):
    """Reflectance [batch, oxygen, blood, melanin, nm] over the whole range of chromophores, one skin per scene."""
    device = draw.device
    nm = NM.to(device)
    oxygen = torch.linspace(*OXYGEN_RANGE, OXYGEN_STEPS, device=device)
    blood = steps(BLOOD_RANGE, BLOOD_STEPS, device)
    melanin = steps(MELANIN_RANGE, MELANIN_STEPS, device)
    one = lambda low, high: draw.uniform(low, high, 1, 1, 1, 1)
    base = (0.244 + 85.3 * torch.exp(-(nm - 154) / 66.2)) * one(0.6, 1.8)
    melanosome = 1.70e12 * nm ** -3.48 * (nm / 550) ** -one(-0.5, 0.5)
    mixed = oxygen[:, None] * HBO2.to(device) + (1 - oxygen[:, None]) * HB.to(device)
    blood_absorption = (BLOOD_PER_EXTINCTION * mixed)[None, :, None, None, :] * blood[None, None, :, None, None]
    # Vessels are thick against violet light: it sees less of the blood in them (flattening, strength drawn).
    blood_absorption = blood_absorption / (1 + one(0, 0.03) * blood_absorption)
    carotene = one(0, 1.3) * torch.exp(-0.5 * ((nm - 460) / 32) ** 2)
    thickness = one(0.005, 0.012)
    # Light thrown back by the surface itself: little, but most of what dark skin shows in green and blue.
    surface = one(0.006, 0.045)
    epidermis = torch.exp(-2 * thickness * (melanin[None, None, None, :, None] * melanosome + base))
    dermis = blood_absorption + base + carotene
    if draw.shifted:
        path = one(0.13, 0.26) * (nm / 550) ** one(0.2, 0.8)
        return surface + (1 - surface) * epidermis * one(0.66, 0.85) * torch.exp(-path * dermis / (1 + 0.12 * dermis))
    scattering = one(30, 55) * (nm / 500) ** -one(0.8, 1.7)
    albedo = scattering / (scattering + dermis)
    k = one(2.6, 3.4)
    diffuse = albedo / (1 + 2 * k * (1 - albedo) + (1 + 2 * k / 3) * torch.sqrt(3 * (1 - albedo)))
    return surface + (1 - surface) * epidermis * diffuse


def light_spectrum(draw):
    """Relative power [batch, nm]: daylight of many colours, lamps, tubes and blends of two."""
    nm = NM.to(draw.device)

    def planck(kelvin):
        return (nm / 560) ** -5 / (torch.exp(1.4388e7 / (nm * kelvin)) - 1)

    def one():
        warm = planck(draw.uniform(2500, 3200, 1))
        day = D65.to(draw.device) * planck(draw.uniform(4300, 12000, 1)) / planck(torch.tensor(6504.0, device=draw.device))
        led = draw.uniform(0.2, 1.3, 1) * torch.exp(-0.5 * ((nm - draw.uniform(442, 460, 1)) / 11) ** 2) + torch.exp(
            -0.5 * ((nm - draw.uniform(545, 605, 1)) / draw.uniform(42, 68, 1)) ** 2)
        tube = 0.12 + sum(draw.uniform(0.3, 1.4, 1) * torch.exp(-0.5 * ((nm - c) / 7) ** 2) for c in (436, 488, 545, 587, 612))
        kinds = torch.stack([s / s.mean(-1, keepdim=True) for s in (warm, day, led, tube)], 1)
        roll = draw.uniform(0, 1, 1)
        pick = (roll > 0.2).long() + (roll > 0.6).long() + (roll > 0.88).long()
        return kinds.gather(1, pick[:, :, None].expand(-1, 1, len(nm)))[:, 0]

    second = draw.uniform(0, 0.5, 1) * draw.chance(0.3, 1)
    return one() * (1 - second) + one() * second


def camera_channels(draw):
    """Sensitivities [batch, 3, nm] of an invented phone."""
    nm = NM.to(draw.device)
    wide = 1.25 if draw.shifted else 1.0

    def channel(centre, spread, leak_centre):
        main = torch.exp(-0.5 * ((nm - draw.uniform(*centre, 1)) / (wide * draw.uniform(*spread, 1))) ** 2)
        leak = draw.uniform(0, 0.14, 1) * torch.exp(-0.5 * ((nm - leak_centre) / 40) ** 2)
        return main + leak
    return torch.stack([channel((588, 618), (24, 42), 450), channel((522, 550), (28, 46), 600),
                        channel((445, 472), (18, 34), 540)], 1)


def inverse(m):
    """Inverse of [batch, 3, 3] by cross products."""
    a, b, c = m.unbind(1)
    columns = torch.stack([torch.linalg.cross(b, c), torch.linalg.cross(c, a), torch.linalg.cross(a, b)], 2)
    return columns / (a * columns[:, :, 0]).sum(-1)[:, None, None]


def colour_matrix(draw, channels):
    """The phone's own matrix, fitted at D65 so that everyday colours come out right in linear sRGB; rows sum to 1."""
    nm = NM.to(draw.device)
    centre, spread = draw.uniform(400, 700, 60, 1), draw.uniform(25, 120, 60, 1)
    bump = torch.exp(-0.5 * ((nm - centre) / spread) ** 2)
    surfaces = draw.uniform(0.03, 0.5, 60, 1) + draw.uniform(-0.3, 0.6, 60, 1) * bump
    surfaces = surfaces.clamp(0.02, 0.98)
    daylight = D65.to(draw.device)
    observer = colour_matching().to(draw.device) * daylight
    wanted = (surfaces @ observer.T) / observer.sum(-1)[1] @ XYZ_TO_SRGB.to(draw.device).T
    seen = surfaces @ (channels * daylight).transpose(1, 2) / (channels * daylight).sum(-1)[:, None, :]
    normal = seen.transpose(1, 2) @ seen + 1e-4 * torch.eye(3, device=draw.device)
    matrix = (inverse(normal) @ seen.transpose(1, 2) @ wanted).transpose(1, 2)
    matrix = matrix / matrix.sum(-1, keepdim=True)
    # Phones push saturation, some less, some more; the identity share stands for raw-like pictures.
    strength = draw.uniform(0.75, 1.35)
    return torch.eye(3, device=draw.device) * (1 - strength) + matrix * strength


def skin_table(draw):
    """Camera RGB relative to white [batch, 3, oxygen, blood, melanin], and lab65-based ITA [batch, melanin, blood]."""
    reflectance = skin_reflectance(draw)
    channels = camera_channels(draw)
    light = light_spectrum(draw)
    weights = channels * light[:, None, :]
    weights = weights / weights.sum(-1, keepdim=True)
    raw = torch.einsum('bxymn,bcn->bcxym', reflectance, weights)
    table = torch.einsum('bij,bjxym->bixym', colour_matrix(draw, channels), raw).clamp_min(0.002)
    observer = colour_matching().to(draw.device) * D65.to(draw.device)
    xyz = torch.einsum('bymn,cn->bcmy', reflectance[:, OXYGEN_STEPS - 2], observer)
    relative = xyz / observer.sum(-1)[None, :, None, None]
    root = torch.where(relative > 216 / 24389, relative.clamp_min(1e-6) ** (1 / 3), (24389 / 27 * relative + 16) / 116)
    lightness, yellow = 116 * root[:, 1] - 16, 200 * (root[:, 1] - root[:, 2])
    ita = torch.rad2deg(torch.atan2(lightness - 50, yellow.clamp_min(0.5)))
    return table, ita


def look_up(table, melanin, blood, oxygen):
    """Camera RGB [batch, 3, rows, columns] of skin with these fractions per pixel."""
    def place(value, bounds):
        low, high = math.log(bounds[0]), math.log(bounds[1])
        return (torch.log(value.clamp(*bounds)) - low) * (2 / (high - low)) - 1
    oxygen_place = 2 * (oxygen.clamp(*OXYGEN_RANGE) - OXYGEN_RANGE[0]) / (OXYGEN_RANGE[1] - OXYGEN_RANGE[0]) - 1
    where = torch.stack([place(melanin, MELANIN_RANGE), place(blood, BLOOD_RANGE), oxygen_place], -1)[:, None]
    return torch.nn.functional.grid_sample(table, where, align_corners=True, padding_mode='border')[:, :, 0]


def melanin_for(ita_table, blood, target_ita):
    """The melanin fraction [batch, 1, 1] at which resting skin has the wanted ITA."""
    device = ita_table.device
    blood_steps = torch.log(steps(BLOOD_RANGE, BLOOD_STEPS, device))
    column = (torch.log(blood)[:, :, 0] - blood_steps).abs().argmin(1)
    ita = ita_table.gather(2, column[:, None, None].expand(-1, MELANIN_STEPS, 1))[:, :, 0]
    fine = torch.nn.functional.interpolate(ita[:, None], size=400, mode='linear', align_corners=True)[:, 0]
    return steps(MELANIN_RANGE, 400, device)[(fine - target_ita[:, :, 0]).abs().argmin(1)][:, None, None]
