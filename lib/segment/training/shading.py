"""Which surface point each map pixel sees, and how much light falls on it."""

import math
from types import SimpleNamespace

import torch
import torch.nn.functional as F

from draw import HEIGHT_MM, WIDTH_MM, ABOVE_APEX_MM, grid_mm

MARGIN_MM = 3.0
TOP_MM, BOTTOM_MM, MARCH_STEPS = 9.0, -16.0, 26


def place(x, y):
    """Card millimetres to the -1...1 of the enlarged height grid."""
    wide, high = WIDTH_MM + 2 * MARGIN_MM, HEIGHT_MM + 2 * MARGIN_MM
    return torch.stack(torch.broadcast_tensors(x * (2 / wide), y * (2 / high) + (2 * (ABOVE_APEX_MM + MARGIN_MM) / high - 1)), -1)


def read(texture, where):
    return F.grid_sample(texture, where, align_corners=False, padding_mode='border')


def sample(texture, x, y):
    """Read a texture of the enlarged height grid at card millimetres."""
    return read(texture, place(x, y))


def draw_view(d):
    """Where the phone stands: tilt to 40 degrees from any side, perspective from 12 cm on."""
    tilt = torch.deg2rad(d.uniform(0, 40) * d.uniform(0, 1) ** 0.5)
    azimuth = d.uniform(0, 2 * math.pi)
    return SimpleNamespace(x=torch.tan(tilt) * torch.cos(azimuth), y=torch.tan(tilt) * torch.sin(azimuth),
                           distance=d.log_uniform(120, 500), centre_x=d.normal(12), centre_y=20 + d.normal(15), tilt=tilt)


def see(d, heights, view):
    """
    March every pixel's ray down through the height field. A point at height z is seen at its own place plus
    z * (tangent of the view), so the pixel at (x, y) meets the surface where x - z * tangent lies on it.
    """
    x, y = grid_mm(d)
    tangent_x = view.x + (x - view.centre_x) / view.distance
    tangent_y = view.y + (y - view.centre_y) / view.distance
    step = (TOP_MM - BOTTOM_MM) / MARCH_STEPS
    flat = place(x, y).expand(d.batch, -1, -1, -1)
    slope = place(tangent_x, tangent_y) - place(0 * x, 0 * y)
    hit_z = torch.full((d.batch, d.height, d.width), BOTTOM_MM, device=d.device)
    before = None
    # From below upward, so that the last crossing found is the topmost one, the one that is seen.
    for k in range(MARCH_STEPS, -1, -1):
        z = TOP_MM - k * step
        depth = read(heights, torch.add(flat, slope, alpha=-z))[:, 0] - z
        if before is not None:
            crossing = (before >= 0) & (depth < 0)
            hit_z = torch.where(crossing, z - step * depth / (depth - before).clamp_max(-1e-4), hit_z)
        before = depth
    for _ in range(2):
        found = read(heights, flat - slope * hit_z[..., None])[:, 0]
        hit_z = torch.where((found - hit_z).abs() < 0.6, 0.5 * (hit_z + found), hit_z)
    return x - hit_z * tangent_x, y - hit_z * tangent_y, hit_z


def blur(field, sigma_px):
    """Gaussian blur of [batch, channels, rows, columns] with one sigma for all."""
    radius = max(1, int(2.5 * sigma_px))
    place = torch.arange(-radius, radius + 1, device=field.device).float()
    kernel = torch.exp(-0.5 * (place / sigma_px) ** 2)
    kernel = (kernel / kernel.sum()).to(field.dtype)
    channels = field.shape[1]
    field = F.pad(field, (radius,) * 4, mode='replicate')
    field = F.conv2d(field, kernel[None, None, :, None].expand(channels, 1, -1, 1), groups=channels)
    return F.conv2d(field, kernel[None, None, None, :].expand(channels, 1, 1, -1), groups=channels)


def draw_light(d):
    """One main light and a sky; warm and cool shares differ a little between the two."""
    elevation = torch.deg2rad(d.uniform(22, 88))
    azimuth = d.uniform(0, 2 * math.pi)
    light = SimpleNamespace(x=torch.cos(elevation) * torch.cos(azimuth), y=torch.cos(elevation) * torch.sin(azimuth),
                            z=torch.sin(elevation))
    light.sky = d.uniform(0.2, 0.9)
    light.sky_tint = torch.exp(d.normal(0.06, 3, 1, 1) * d.chance(0.6, 1, 1, 1))
    light.softness = d.uniform(0.05, 0.6)
    light.occlusion = d.uniform(0.02, 0.16)
    light.wrap = d.uniform(0, 0.35)
    return light


def surface_texture(d, heights):
    """Height, its two slopes and two scales of hollowness, in one texture."""
    s = d.px_per_mm
    slope_x = F.pad(heights[..., 2:] - heights[..., :-2], (1, 1, 0, 0), mode='replicate') * s / 2
    slope_y = F.pad(heights[..., 2:, :] - heights[..., :-2, :], (0, 0, 1, 1), mode='replicate') * s / 2
    near = (blur(heights, 0.5 * s) - heights).clamp(-1, 2)
    small = F.avg_pool2d(heights.clamp_min(-14), 4)
    wide = F.interpolate(blur(small, 2.2 * s / 4), size=heights.shape[-2:], mode='bilinear', align_corners=False)
    far = (wide - heights).clamp(-2, 8)
    return torch.cat([heights, slope_x.clamp(-4, 4), slope_y.clamp(-4, 4), near, far], 1)


def cast_shadow(d, heights, x, y, z, light):
    """Share of the main light that reaches (x, y, z) past higher parts of the toe."""
    flat = torch.hypot(light.x, light.y).clamp_min(0.05)
    here = place(x, y)
    toward = place(light.x / flat, light.y / flat) - place(0 * flat, 0 * flat)
    worst = torch.full_like(z, -20.0)
    for k in range(1, 9):
        away = 0.25 * 1.6 ** k / 2
        blocked = read(heights, torch.add(here, toward, alpha=away))[:, 0] - z - away * light.z / flat - 0.1
        worst = torch.maximum(worst, blocked / (light.softness * (0.15 + 0.15 * away)))
    return 1 - torch.sigmoid(worst)


def illuminate(d, texture, x, y, z, light, bumps):
    """Light on each visible point relative to a level card [batch, 3, rows, columns], and the surface normal."""
    seen = sample(texture, x, y)
    slope_x, slope_y = seen[:, 1] + bumps[0], seen[:, 2] + bumps[1]
    length = torch.sqrt(1 + slope_x ** 2 + slope_y ** 2)
    facing = (light.z - slope_x * light.x - slope_y * light.y) / length
    facing = ((facing + light.wrap) / (1 + light.wrap)).clamp_min(0)
    hollow = torch.exp(-light.occlusion * (seen[:, 4].clamp_min(0) + 2 * seen[:, 3].clamp_min(0)))
    upward = 0.5 + 0.5 / length
    key = facing * cast_shadow(d, texture[:, :1], x, y, z, light)
    sky = light.sky[:, None] * light.sky_tint * (hollow * upward)[:, None]
    level = light.sky[:, None] * light.sky_tint + (1 - light.sky[:, None]) * light.z[:, None]
    normal = (-slope_x / length, -slope_y / length, 1 / length)
    return (sky + ((1 - light.sky) * key)[:, None]) / level, normal


def highlight(light, view, normal, sharpness):
    """Blinn's lobe around the mirror direction, 0...1."""
    half_x = light.x - torch.sin(torch.atan(view.x))
    half_y = light.y - torch.sin(torch.atan(view.y))
    half_z = light.z + 1
    length = torch.sqrt(half_x ** 2 + half_y ** 2 + half_z ** 2)
    aligned = (normal[0] * half_x + normal[1] * half_y + normal[2] * half_z) / length
    return aligned.clamp(0, 1) ** sharpness
