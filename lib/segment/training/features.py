"""
What the network is fed with, and what it answers. The same few lines exist on the other side, where the model is
used; the model card carries the numbers.
"""

import torch

PLANES = ('toe', 'nailPlate', 'groove', 'raw', 'macerated', 'erythema', 'nailUnit', 'foldMarginTreated', 'excess')
CHANNELS = ('logRed', 'logGreen', 'logBlue', 'logRedGreen', 'logGreenBlue', 'seen', 'across', 'down')
FLOOR, CEILING = 0.004, 2.0
# Natural logarithms; offset and scale bring skin near 0 +- 1.
LOG_OFFSET = (-1.2, -1.7, -2.1)
LOG_SCALE = 1.0
RATIO_OFFSET = (0.5, 0.4)
RATIO_SCALE = 0.35


def features(image, seen, offset_x=0.0, offset_y=0.0):
    """
    image [batch, 3, rows, columns]: linear RGB relative to the card's white; exactly 0 in all channels where the photo
    ends. seen [batch, rows, columns]: 1, or 0 outside the photo and where a channel is clipped.
    """
    batch, _, rows, columns = image.shape
    inside = (image.amax(1, keepdim=True) > 0).to(image.dtype)
    log = torch.log(image.clamp(FLOOR, CEILING))
    colour = torch.stack([(log[:, k] - LOG_OFFSET[k]) / LOG_SCALE for k in range(3)]
                         + [(log[:, 0] - log[:, 1] - RATIO_OFFSET[0]) / RATIO_SCALE,
                            (log[:, 1] - log[:, 2] - RATIO_OFFSET[1]) / RATIO_SCALE], 1) * inside
    across = torch.linspace(-1, 1, columns, device=image.device)[None, None, :].expand(batch, rows, columns) + offset_x
    down = torch.linspace(-1, 1, rows, device=image.device)[None, :, None].expand(batch, rows, columns) + offset_y
    return torch.cat([colour, seen[:, None], across[:, None], down[:, None]], 1)
