"""What a phone, its picture file and the way back to reflectance do to a scene. Strengths go beyond the usual."""

import math

import torch
import torch.nn.functional as F

from shading import blur

LUMA = torch.tensor([[0.299, 0.587, 0.114], [-0.168736, -0.331264, 0.5], [0.5, -0.418688, -0.081312]])
LUMA_BACK = torch.linalg.inv(LUMA)
# ISO/IEC 10918-1 annex K, luminance and chrominance.
QUANT_LUMA = torch.tensor([16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56,
                           14, 17, 22, 29, 51, 87, 80, 62, 18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113,
                           92, 49, 64, 78, 87, 103, 121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99]).float().view(8, 8)
QUANT_CHROMA = torch.tensor([17, 18, 24, 47, 99, 99, 99, 99, 18, 21, 26, 66, 99, 99, 99, 99, 24, 26, 56, 99, 99, 99, 99, 99,
                             47, 66, 99, 99, 99, 99, 99, 99] + [99] * 32).float().view(8, 8)


def blocks(plane, quant, quality):
    """8 x 8 cosine transform, rounding, and back; plane [batch, rows, columns] in 0...255."""
    device = plane.device
    k = torch.arange(8, device=device).float()
    basis = torch.cos((2 * k[None] + 1) * k[:, None] * math.pi / 16) / 2
    basis[0] /= math.sqrt(2)
    batch, rows, columns = plane.shape
    padded = F.pad(plane[:, None], (0, -columns % 8, 0, -rows % 8), mode='replicate')[:, 0]
    tiles = padded.view(batch, padded.shape[1] // 8, 8, padded.shape[2] // 8, 8).permute(0, 1, 3, 2, 4)
    scale = torch.where(quality < 50, 50 / quality, 2 - quality / 50).view(-1, 1, 1, 1, 1)
    table = (quant.to(device) * scale).clamp_min(1)
    rounded = torch.round(basis @ (tiles - 128) @ basis.T / table) * table
    back = (basis.T @ rounded @ basis + 128).permute(0, 1, 3, 2, 4).reshape(padded.shape)
    return back[:, :rows, :columns]


def jpeg(coded, quality):
    """4:2:0 and block rounding of a coded picture 0...1."""
    matrix = LUMA.to(coded.device)
    ycc = torch.einsum('ij,bjrc->birc', matrix, coded * 255)
    luma = blocks(ycc[:, 0], QUANT_LUMA, quality)
    size = ycc.shape[-2:]
    chroma = [blocks(F.avg_pool2d(ycc[:, k:k + 1] + 128, 2, ceil_mode=True)[:, 0], QUANT_CHROMA, quality) for k in (1, 2)]
    chroma = [F.interpolate(c[:, None], size=size, mode='bilinear', align_corners=False)[:, 0] - 128 for c in chroma]
    out = torch.einsum('ij,bjrc->birc', LUMA_BACK.to(coded.device), torch.stack([luma, *chroma], 1))
    return (out.round() / 255).clamp(0, 1)


def blur_each(image, sigma_x, sigma_y):
    """Gaussian blur with a sigma (pixels) per scene."""
    batch, channels, rows, columns = image.shape
    place = torch.arange(-5, 6, device=image.device).float()

    def kernel(sigma):
        k = torch.exp(-0.5 * (place / sigma.view(-1, 1).clamp_min(0.05)) ** 2)
        return (k / k.sum(1, keepdim=True)).repeat_interleave(channels, 0)
    flat = F.pad(image.reshape(1, -1, rows, columns), (5,) * 4, mode='replicate')
    groups = batch * channels
    flat = F.conv2d(flat, kernel(sigma_x)[:, None, None, :], groups=groups)
    return F.conv2d(flat, kernel(sigma_y)[:, None, :, None], groups=groups).view(image.shape)


def tone(d, linear, coefficients, inverse=False):
    """A phone's curve: the plain 1/2.2 power bent by a shoulder and an S; strength per scene."""
    gamma, shoulder = coefficients
    if inverse:
        return (linear ** gamma * (1 + shoulder * linear ** gamma)) / (1 + shoulder)
    curved = linear * (1 + shoulder)
    root = (-1 + torch.sqrt(1 + 4 * shoulder * curved)) / (2 * shoulder)
    return root.clamp_min(0) ** (1 / gamma)


def photograph(d, image, focus):
    """
    Scene reflectance to the map that rectification hands on, and `seen`. The work in the middle happens on the photo's
    own pixel grid, whose pitch is drawn for the whole batch.
    """
    col = lambda f: f[:, :, :, None] if f.dim() == 3 else f
    size = image.shape[-2:]
    s = d.px_per_mm
    sharp = d.uniform(0.04, 0.16) * s
    image = blur_each(image, sharp * d.log_uniform(0.75, 1.33), sharp * d.log_uniform(0.75, 1.33))
    soft_image = blur(image, 0.3 * s)
    image = image + (soft_image - image) * (focus.clamp(0, 1) ** 1.5)[:, None] * col(d.chance(0.7))

    pitch = d.host_uniform(0.72, 1.5)
    photo = F.interpolate(image, scale_factor=pitch, mode='bilinear', align_corners=False, antialias=pitch < 1)
    exposure = col(d.uniform(0.4, 0.88))
    gain = torch.exp(d.normal(0.12, 3, 1, 1)) * exposure
    light = (photo * gain).clamp_min(0)
    grain = d.log_uniform(0.0004, 0.009)
    noise = d.white(3, *light.shape[-2:])
    light = light + noise * col(grain) * torch.sqrt(light + 0.02) * 1.0
    clipped = F.interpolate((light.amax(1, keepdim=True) >= 0.999).float(), size=size, mode='nearest')[:, 0]
    light = light.clamp(0, 1)
    curve = (col(d.uniform(1.9, 2.5)), col(d.log_uniform(0.03, 1.2 if d.shifted else 0.7)))
    coded = tone(d, light, curve).clamp(0, 1)
    smooth = blur(coded, 1.0)
    coded = coded + (smooth - coded) * col(d.uniform(0, 0.8) * d.chance(0.4))
    coded = (coded + (coded - blur(coded, 1.4)) * col(d.uniform(0, 1.0) * d.chance(0.6))).clamp(0, 1)
    coded = jpeg(coded, d.uniform(55, 96, 1))
    light = tone(d, coded, curve, inverse=True)

    # The curve, the black level and the white found from the card are a little wrong.
    light = light.clamp_min(0) ** col(torch.exp(d.normal(0.07).clamp(-0.16, 0.16)))
    light = light / gain * torch.exp(d.normal(0.035, 3, 1, 1)) * torch.exp(col(d.normal(0.08)))
    light = light + col(d.normal(0.003))
    image = F.interpolate(light, size=size, mode='bilinear', align_corners=False).clamp(0.001, 2)
    return outside(d, image, clipped)


def outside(d, image, clipped):
    """Cut off what lies beyond the photo's edge, in some scenes."""
    rows, columns = image.shape[-2:]
    x = torch.linspace(-1, 1, columns, device=d.device)[None, None, :]
    y = torch.linspace(-1, 1, rows, device=d.device)[None, :, None]
    turn = d.uniform(0, 6.283)
    edge = torch.cos(turn) * x + torch.sin(turn) * y - torch.where(d.chance(0.2) > 0, d.uniform(0.5, 1.0), torch.full_like(turn, 9.0))
    keep = (edge < 0).float()
    seen = keep * (1 - clipped * d.chance(0.75))
    return image * keep[:, None], seen, keep
