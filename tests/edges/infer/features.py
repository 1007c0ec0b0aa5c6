"""
The channels of lib/segment/training/features.py in NumPy instead of PyTorch, with its own numbers read from its text.
In: three planes of linear light and one of "seen" as float32, plane after plane. Out: the eight channels, likewise.
"""

import ast
import sys
from pathlib import Path

import numpy as np

source = Path(sys.argv[1])
rows, columns = int(sys.argv[2]), int(sys.argv[3])

known = {}
for line in ast.parse(source.read_text()).body:
    if isinstance(line, ast.Assign):
        target, value = line.targets[0], ast.literal_eval(line.value)
        if isinstance(target, ast.Tuple):
            known.update(zip((name.id for name in target.elts), value))
        else:
            known[target.id] = value

planes = np.frombuffer(sys.stdin.buffer.read(), np.float32).reshape(4, rows, columns).astype(np.float64)
image, seen = planes[:3], planes[3]
inside = (image.max(0) > 0).astype(np.float64)
log = np.log(image.clip(known['FLOOR'], known['CEILING']))
channels = [(log[k] - known['LOG_OFFSET'][k]) / known['LOG_SCALE'] * inside for k in range(3)]
channels += [(log[k] - log[k + 1] - known['RATIO_OFFSET'][k]) / known['RATIO_SCALE'] * inside for k in range(2)]
across = np.broadcast_to(np.linspace(-1, 1, columns)[None, :], (rows, columns))
down = np.broadcast_to(np.linspace(-1, 1, rows)[:, None], (rows, columns))
sys.stdout.buffer.write(np.stack([*channels, seen, across, down]).astype(np.float32).tobytes())
