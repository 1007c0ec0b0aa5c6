import { describe, expect, it } from 'vitest';
import { expose } from '../../phantom/camera/expose';
import { shapesSpec, skinPatchSpec } from '../../phantom/target-spec';
import { buildScene } from '../../phantom/scene/build-scene';
import { sceneTruth } from '../../phantom/truth/scene-truth';
import type { PrintedShape } from '../../phantom/phantom-spec';

const DISC: PrintedShape = { kind: 'disc', centreMm: [42.8, 34], radiusMm: 6 };
const ELLIPSE: PrintedShape = { kind: 'ellipse', centreMm: [42.8, 34], halfAxesMm: [7, 4], turnDeg: 25 };
/** By the shoelace: (−214 + 575 + 225 − 398) / 2 = 94 mm². */
const POLYGON: PrintedShape = { kind: 'polygon', cornersMm: [[38, 28], [47, 29], [45, 40], [36, 37]] };

const level = { tiltDeg: 0, k1: 0, k2: 0, rollDeg: 11, widthPx: 640, heightPx: 480, focal35Mm: 90, distanceMm: 260, vignetting: 0, aimMm: [0, 0] as const };

/** Dark share of the picture in linear light, turned into mm² by the known scale. */
function imagedAreaMm2(shape: PrintedShape, heightMm: number): number {
  const spec = shapesSpec(3, [shape], heightMm, { camera: level, card: { face: 'stand-in' }, light: { gradient: 0, spreadDeg: 5 } });
  const scene = buildScene(spec);
  const { rgb, widthPx, heightPx } = expose(scene);
  const { column, row } = scene.camera.project([42.8, 34, heightMm]);
  const reachPx = 9.5 * scene.pxPerMm;
  let paper = 0;
  let least = Infinity;
  const inside: number[] = [];
  for (let i = 0; i < widthPx * heightPx; i++) {
    if (Math.hypot((i % widthPx) - column, Math.floor(i / widthPx) - row) > reachPx) continue;
    inside.push(rgb[3 * i + 1]);
    paper = Math.max(paper, rgb[3 * i + 1]);
    least = Math.min(least, rgb[3 * i + 1]);
  }
  return inside.reduce((sum, value) => sum + (paper - value) / (paper - least), 0) / scene.pxPerMm ** 2;
}

describe('printed shapes in the notch', () => {
  it.each([['disc', DISC, Math.PI * 36], ['ellipse', ELLIPSE, Math.PI * 28], ['polygon', POLYGON, 94]] as const)(
    'know the exact area of a %s',
    (_, shape, areaMm2) => {
      const truth = sceneTruth(buildScene(shapesSpec(3, [shape], 0, { card: { face: 'stand-in' } })));
      expect(truth.outlines?.shapes[0].areaMm2).toBeCloseTo(areaMm2, 6);
      expect(truth.measurements).toBeNull();
    },
  );

  it.each([['disc', DISC, Math.PI * 36], ['ellipse', ELLIPSE, Math.PI * 28], ['polygon', POLYGON, 94]] as const)(
    'show a %s of that area, to a tenth of a per cent',
    (_, shape, areaMm2) => expect(Math.abs(imagedAreaMm2(shape, 0) / areaMm2 - 1)).toBeLessThan(0.001),
  );

  it('look larger by exactly D / (D − Δz) when raised towards the camera', () => {
    const grown = Math.sqrt(imagedAreaMm2(DISC, 5) / imagedAreaMm2(DISC, 0));
    expect(Math.abs(grown / (260 / 255) - 1)).toBeLessThan(0.0005);
  });
});

describe('uniform skin in the notch', () => {
  it('has more blood in its right half, and so reflects less green', () => {
    const spec = skinPatchSpec(4, 'light', 0.02, { camera: level, card: { face: 'stand-in' }, light: { gradient: 0 } });
    const scene = buildScene(spec);
    const { rgb, widthPx } = expose(scene);
    const green = (across: number): number => {
      const { column, row } = scene.camera.project([across, 36, 0]);
      return rgb[3 * (Math.round(row) * widthPx + Math.round(column)) + 1];
    };
    expect(green(48)).toBeLessThan(0.85 * green(38));
    expect(green(36)).toBeCloseTo(green(40), 2);
  });
});
