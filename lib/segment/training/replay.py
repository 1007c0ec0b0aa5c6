"""Maps shown again: a map costs more to render than to learn from, so each is kept a while and shown in new guises."""

import torch

from features import CHANNELS, LOG_SCALE, RATIO_SCALE

ACROSS = CHANNELS.index('across')
SEEN = CHANNELS.index('seen')
# Standard deviations of what a new guise changes: exposure of all channels, and each channel by itself.
EXPOSURE, TINT = 0.08, 0.02


class Replay:
    """A ring of the latest maps, kept small (16 and 8 bits) on the device."""

    def __init__(self, places):
        self.places, self.inputs, self.targets, self.count = places, None, None, 0

    def keep(self, inputs, targets):
        if self.inputs is None:
            self.inputs = torch.empty(self.places, *inputs.shape[1:], dtype=torch.float16, device=inputs.device)
            self.targets = torch.empty(self.places, *targets.shape[1:], dtype=torch.uint8, device=inputs.device)
        at = (self.count + torch.arange(len(inputs), device=inputs.device)) % self.places
        self.inputs[at] = inputs.half()
        self.targets[at] = (targets * 255).round().byte()
        self.count += len(inputs)

    def draw(self, batch):
        """A batch of earlier maps, half of them mirrored, each in another light."""
        held = min(self.count, self.places)
        pick = torch.randint(held, (batch,), device=self.inputs.device)
        inputs, targets = self.inputs[pick].float(), self.targets[pick].float() / 255
        mirrored = torch.rand(batch, 1, 1, 1, device=inputs.device) < 0.5
        flipped = inputs.flip(-1)
        flipped[:, ACROSS] = -flipped[:, ACROSS]
        inputs, targets = torch.where(mirrored, flipped, inputs), torch.where(mirrored, targets.flip(-1), targets)
        return in_another_light(inputs), targets


def in_another_light(inputs):
    """Logarithms moved as another exposure and white balance would move them; beyond the photo's edge all stays 0."""
    batch, device = len(inputs), inputs.device
    move = EXPOSURE * torch.randn(batch, 1, 1, 1, device=device) + TINT * torch.randn(batch, 3, 1, 1, device=device)
    inside = (inputs[:, :SEEN].abs().amax(1, keepdim=True) > 0).float()
    shift = torch.cat([move / LOG_SCALE, (move[:, :2] - move[:, 1:]) / RATIO_SCALE], 1)
    return torch.cat([inputs[:, :SEEN] + shift * inside, inputs[:, SEEN:]], 1)
