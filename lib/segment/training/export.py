"""
Members to one ONNX file and its card: python export.py ../weights VERSION WEIGHTS.npz [WEIGHTS.npz ...]
Several members become one model that answers with their mean. Batch norm is folded by the exporter; weights are stored
in half precision and widened when the model is loaded, which halves the file and changes answers by less than 0.01.
"""

import hashlib
import json
import os
import sys

import numpy as np
import onnx
import torch
from torch import nn

import draw
import features as inputs
from network import ToeTissue, shape_of
from train import load_weights

NAME = 'toe-tissue'


class Members(nn.Module):
    """Mean probability of the members."""

    def __init__(self, networks):
        super().__init__()
        self.networks = nn.ModuleList(networks)

    def forward(self, features):
        return sum(torch.sigmoid(n(features)) for n in self.networks) / len(self.networks)


def member(path):
    network = ToeTissue(*shape_of(np.load(path)))
    load_weights(network, path)
    return network.eval()


LEAST_VALUES_TO_HALVE = 64


def halved(model):
    """The same graph with its large weights as 16-bit numbers, each behind a cast back to 32 bits."""
    stored, casts = [], []
    for weight in model.graph.initializer:
        values = onnx.numpy_helper.to_array(weight)
        if values.dtype != np.float32 or values.size < LEAST_VALUES_TO_HALVE:
            stored.append(weight)
            continue
        stored.append(onnx.numpy_helper.from_array(values.astype(np.float16), f'{weight.name}.half'))
        casts.append(onnx.helper.make_node('Cast', [f'{weight.name}.half'], [weight.name], to=onnx.TensorProto.FLOAT))
    nodes = [*casts, *model.graph.node]
    del model.graph.initializer[:], model.graph.node[:]
    model.graph.initializer.extend(stored)
    model.graph.node.extend(nodes)
    onnx.checker.check_model(model)
    return model


def card(version, data, px_per_mm=8):
    return dict(
        name=NAME, version=version, sha256=hashlib.sha256(data).hexdigest(), bytes=len(data), opset=16,
        input=dict(name='features', shape=['batch', len(inputs.CHANNELS), int(draw.HEIGHT_MM * px_per_mm), int(draw.WIDTH_MM * px_per_mm)],
                   channels=list(inputs.CHANNELS)),
        output=dict(name='planes', planes=list(inputs.PLANES), range=[0, 1]),
        grid=dict(pxPerMm=px_per_mm, widthPx=int(draw.WIDTH_MM * px_per_mm), heightPx=int(draw.HEIGHT_MM * px_per_mm),
                  acrossFromNotchAxisMm=-draw.WIDTH_MM / 2 + 0.5 / px_per_mm, downFromNotchApexMm=-draw.ABOVE_APEX_MM + 0.5 / px_per_mm),
        preprocessing=dict(floor=inputs.FLOOR, ceiling=inputs.CEILING, logarithm='natural',
                           logOffset=list(inputs.LOG_OFFSET), logScale=inputs.LOG_SCALE,
                           ratioOffset=list(inputs.RATIO_OFFSET), ratioScale=inputs.RATIO_SCALE))


def main():
    folder, version, paths = sys.argv[1], sys.argv[2], sys.argv[3:]
    networks = [member(p) for p in paths]
    shape = (1, len(inputs.CHANNELS), int(draw.HEIGHT_MM * 8), int(draw.WIDTH_MM * 8))
    target = os.path.join(folder, f'{NAME}.onnx')
    options = dict(dynamo=False) if 'dynamo' in torch.onnx.export.__code__.co_varnames else {}
    torch.onnx.export(Members(networks), torch.zeros(shape), target, opset_version=16, input_names=['features'],
                      output_names=['planes'], dynamic_axes=dict(features={0: 'batch'}, planes={0: 'batch'}), **options)
    onnx.save(halved(onnx.load(target)), target)
    with open(target, 'rb') as file:
        data = file.read()
    with open(os.path.join(folder, f'{NAME}.json'), 'w') as file:
        json.dump(card(version, data), file, indent=2)
        file.write('\n')
    print(target, len(data))


if __name__ == '__main__':
    main()
