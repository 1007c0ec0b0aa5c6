"""Average the weights of members that went on from one common start: python blend.py OUT.npz WEIGHTS.npz WEIGHTS.npz"""

import sys

import numpy as np

members = [np.load(path) for path in sys.argv[2:]]
np.savez(sys.argv[1], **{name: np.mean([m[name] for m in members], 0).astype(members[0][name].dtype) for name in members[0]})
