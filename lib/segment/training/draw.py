"""Random numbers and smooth random fields for one batch of scenes, all from one seed."""

import math

import torch
import torch.nn.functional as F

WIDTH_MM, HEIGHT_MM = 44.0, 56.0
ABOVE_APEX_MM = 6.0


POOL = 1024
BANK_SCALES_MM = (0.2, 0.35, 0.6, 1.0, 1.7, 2.8, 4.5, 8.0)
BANK_PICKS = 3
PROFILE_STEPS, PROFILE_WAVES = 512, 6


class Draw:
    """
    One batch's source of randomness. Every per-scene number has the shape [batch, 1, 1]. Small draws come from one
    pool and noise is cut out of a bank of fields, because many tiny steps would keep a GPU waiting.
    """

    def __init__(self, batch, device, seed, px_per_mm=8, shifted=False):
        self.batch, self.device, self.px_per_mm = batch, device, px_per_mm
        self.width, self.height = int(WIDTH_MM * px_per_mm), int(HEIGHT_MM * px_per_mm)
        self.shifted = shifted
        self.generator = torch.Generator(device=device).manual_seed(seed)
        self.host = torch.Generator().manual_seed(seed + 1)
        self.spare = 16 * px_per_mm
        self.refill()
        self.bank = {scale: self.fields(scale) for scale in BANK_SCALES_MM}
        self.hills = {scale: self.clouds(scale) for scale in BANK_SCALES_MM[2:]}

    def refill(self):
        self.pool = torch.rand(POOL, self.batch, 1, 1, generator=self.generator, device=self.device)
        self.normals = torch.randn(POOL, self.batch, 1, 1, generator=self.generator, device=self.device)
        self.used = 0

    def share(self, *shape):
        """Uniform in 0...1."""
        if shape:
            return torch.rand(self.batch, *shape, generator=self.generator, device=self.device)
        if self.used == POOL:
            self.refill()
        self.used += 1
        return self.pool[self.used - 1]

    def uniform(self, low, high, *shape):
        return low + (high - low) * self.share(*shape)

    def log_uniform(self, low, high, *shape):
        return torch.exp(self.uniform(math.log(low), math.log(high), *shape))

    def normal(self, spread, *shape):
        if shape:
            return spread * torch.randn(self.batch, *shape, generator=self.generator, device=self.device)
        self.share()
        return spread * self.normals[self.used - 1]

    def chance(self, probability, *shape):
        """1.0 with the given probability, else 0.0."""
        return (self.share(*shape) < probability).float()

    def sign(self):
        return 2 * self.chance(0.5) - 1

    def host_uniform(self, low, high):
        """One number for the whole batch, kept off the device (sizes, crops)."""
        return low + (high - low) * torch.rand(1, generator=self.host).item()

    def white(self, *shape):
        return torch.randn(self.batch, *shape, generator=self.generator, device=self.device)

    def smooth(self, step_x, step_y, picks, rows, columns):
        coarse = self.white(picks, math.ceil(rows / step_y) + 3, math.ceil(columns / step_x) + 3)
        big = F.interpolate(coarse, size=(int(coarse.shape[2] * step_y), int(coarse.shape[3] * step_x)), mode='bicubic',
                            align_corners=False)
        # Interpolation lowers the spread to about 0.72 (0.85 at pixel steps); undone here.
        return big[..., :rows, :columns] / (0.72 if min(step_x, step_y) > 1.5 else 0.85)

    def fields(self, scale_mm):
        step = max(1.0, scale_mm * self.px_per_mm)
        return self.smooth(step, step, BANK_PICKS, self.height + self.spare, self.width + self.spare)

    def clouds(self, scale_mm):
        """Noise over three scales, unit spread."""
        near = [max(s for s in BANK_SCALES_MM if s <= max(scale_mm / 2 ** k, 0.2)) for k in range(3)]
        return (self.bank[scale_mm] + 0.6 * self.bank[near[1]] + 0.36 * self.bank[near[2]]) / 1.22

    def cut(self, bank, scale_mm, size):
        scale = min(bank, key=lambda s: abs(math.log(s / scale_mm)))
        pick = int(self.host_uniform(0, BANK_PICKS - 1e-6))
        height, width = size or (self.height, self.width)
        whole = bank[scale]
        top = int(self.host_uniform(0, whole.shape[2] - height))
        left = int(self.host_uniform(0, whole.shape[3] - width))
        field = whole[:, pick, top:top + height, left:left + width]
        return -field if self.host_uniform(0, 1) < 0.5 else field

    def noise(self, scale_mm, size=None):
        """Smooth noise with blobs of about scale_mm, zero mean, unit spread."""
        return self.cut(self.bank, scale_mm, size)

    def cloud(self, scale_mm):
        """The same with detail down to a quarter of scale_mm."""
        return self.cut(self.hills, scale_mm, None)

    def streaks(self, scale_mm):
        """Noise that hardly changes down the map."""
        step = max(1.0, scale_mm * self.px_per_mm)
        return self.smooth(step, 40 * self.px_per_mm, 1, self.height, self.width)[:, 0]

    def profile(self, along):
        """A smooth periodic function of an angle (radians), about unit spread, for outlines."""
        wave = torch.arange(1, PROFILE_WAVES + 1, device=self.device).float()[:, None]
        angle = torch.linspace(0, 2 * math.pi, PROFILE_STEPS, device=self.device)
        size = self.normal(1.0, PROFILE_WAVES, 1) / wave
        table = (size * torch.cos(wave * angle + self.uniform(0, 2 * math.pi, PROFILE_WAVES, 1))).sum(1)
        index = torch.remainder(along * (PROFILE_STEPS / (2 * math.pi)), PROFILE_STEPS).long().clamp(0, PROFILE_STEPS - 1)
        return torch.gather(table, 1, index.flatten(1)).view(along.shape)


def grid_mm(draw, margin_mm=0.0):
    """Pixel centres in millimetres: across from the notch axis, down from the notch apex."""
    width = draw.width + 2 * int(margin_mm * draw.px_per_mm)
    height = draw.height + 2 * int(margin_mm * draw.px_per_mm)
    x = (torch.arange(width, device=draw.device) + 0.5) / draw.px_per_mm - WIDTH_MM / 2 - margin_mm
    y = (torch.arange(height, device=draw.device) + 0.5) / draw.px_per_mm - ABOVE_APEX_MM - margin_mm
    return x[None, None, :].expand(1, height, width), y[None, :, None].expand(1, height, width)


def soft(signed_mm, width_mm=0.07):
    """1 where signed_mm is positive, 0 where negative, with an edge about one map pixel wide."""
    return torch.sigmoid(signed_mm / width_mm)
