"""Cross-entropy for honest probabilities, with a share of overlap (Dice) so that small tissues count."""

import torch
import torch.nn.functional as F

from features import PLANES

WEIGHTS = dict(toe=0.4, nailPlate=1.0, groove=1.2, raw=1.0, macerated=0.8, erythema=2.0, nailUnit=1.0,
               foldMarginTreated=1.2, excess=1.0)
WITHOUT_DICE = ('excess',)
OFF_TOE = 0.25


def loss_of(logits, targets, dice_share=0.35):
    """One number; pixels away from the toe count a quarter."""
    near = F.max_pool2d(targets[:, :1], 9, 1, 4)
    pixel_weight = OFF_TOE + (1 - OFF_TOE) * near
    crossed = (F.binary_cross_entropy_with_logits(logits, targets, reduction='none') * pixel_weight).mean((0, 2, 3))
    guess = torch.sigmoid(logits)
    # Over the batch, not per map: a map whose redness can't be seen must not be pushed into guessing.
    common = (guess * targets).sum((0, 2, 3))
    dice = 1 - (2 * common + 50) / (guess.square().sum((0, 2, 3)) + targets.square().sum((0, 2, 3)) + 50)
    total = 0
    for k, name in enumerate(PLANES):
        part = 12 * crossed[k] + (0 if name in WITHOUT_DICE else dice_share * dice[k])
        total = total + WEIGHTS[name] * part
    return total / sum(WEIGHTS.values())
