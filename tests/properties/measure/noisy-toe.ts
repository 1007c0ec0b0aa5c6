/**
 * Draws a toe whose truth is known, and the same toe as a photo of the stated quality would show it. Every error is
 * drawn from the distribution that the budget claims, by its own route: outlines are bent, maps are stretched.
 */
import {
  AXIS_U_DEG,
  BOUNDARY_COMMON_SHARE,
  BOUNDARY_CORRELATION_MM,
  DEFAULT_DISTANCE_MM,
  FIDUCIAL_LEVER_MM,
  GROOVE_STEP_U_MM,
  LENS_RELATIVE_U,
  NAIL_HEIGHT_U_MM,
  SKIN_SLOPE_U_DEG,
} from '../../../lib/measure/constants';
import type { MeasureInput, ScaleFacts } from '../../../lib/measure/measure-input';
import { resampleLine } from '../../../lib/measure/resample-line';
import type { LineMm, PointMm, RingMm } from '../../../lib/units';
import { SIMPLE, marginLine, region } from '../../unit/measure/simple-toe';
import { moved, scaled } from '../../unit/measure/shapes';

export interface Chance {
  readonly uniform: () => number;
  readonly normal: () => number;
}

const STEP_MM = 0.1;
const FULL_TURN = 2 * Math.PI;

/** A lobed region beside a straight margin of 14 mm, with a groove that is not quite even. */
export function trueToe({ uniform }: Chance): MeasureInput {
  const radius = 2.5 + 2.5 * uniform();
  const lobes = Array.from({ length: 3 }, (_, index) => ({
    size: (0.25 * uniform()) / (index + 1),
    phase: FULL_TURN * uniform(),
  }));
  const outline = Array.from({ length: 360 }, (_, index): PointMm => {
    const angle = (FULL_TURN * index) / 360;
    const wave = lobes.reduce((sum, { size, phase }, lobe) => sum + size * Math.cos((lobe + 2) * angle + phase), 1);
    return {
      acrossMm: 51 + radius + radius * wave * Math.cos(angle),
      downMm: 34 + 1.4 * radius * wave * Math.sin(angle),
    };
  });
  const lateral = resampleLine([{ acrossMm: 50, downMm: 20 }, { acrossMm: 50, downMm: 34 }], STEP_MM);
  const width = 1.5 + 1.5 * uniform();
  const cutEdge = lateral.map(({ acrossMm, downMm }) => ({
    acrossMm: acrossMm - width - 0.2 * Math.sin(downMm / 3),
    downMm,
  }));
  return {
    ...SIMPLE,
    toeAxis: { across: 0, down: 1 },
    outlines: {
      ...SIMPLE.outlines,
      toe: null,
      erythema: region(resampleLine(outline, STEP_MM, true), 0.2 + 0.4 * uniform()),
      nailFoldMargin: marginLine(lateral, 0.1 + 0.15 * uniform()),
      marginLateral: lateral,
      cutEdge: { line: cutEdge, boundaryUMm: 0.1 + 0.1 * uniform() },
    },
  };
}

/** Noise along a line whose correlation is a Gaussian of integral scale BOUNDARY_CORRELATION_MM, standard deviation 1. */
function wobble({ normal }: Chance, count: number, closed: boolean): number[] {
  // White noise smoothed by exp(−x² / 2w²) has the correlation exp(−x² / 4w²), whose integral is 2w·√π.
  const widthMm = BOUNDARY_CORRELATION_MM / (2 * Math.sqrt(Math.PI));
  const half = Math.ceil((4 * widthMm) / STEP_MM);
  const kernel = Array.from({ length: 2 * half + 1 }, (_, at) => Math.exp(-(((at - half) * STEP_MM) ** 2) / (2 * widthMm ** 2)));
  const norm = Math.sqrt(kernel.reduce((sum, weight) => sum + weight ** 2, 0));
  const length = closed ? count : count + 2 * half;
  const white = Array.from({ length }, normal);
  return Array.from({ length: count }, (_, at) =>
    kernel.reduce((sum, weight, offset) => sum + weight * white[(at + offset - (closed ? half : 0) + length) % length], 0) / norm,
  );
}

/** Moves every point of an evenly spaced line sideways, all alike and each on its own. */
function bend(chance: Chance, line: LineMm, boundaryUMm: number, closed: boolean): LineMm {
  const common = chance.normal() * boundaryUMm * Math.sqrt(BOUNDARY_COMMON_SHARE);
  const local = wobble(chance, line.length, closed).map((value) => value * boundaryUMm * Math.sqrt(1 - BOUNDARY_COMMON_SHARE));
  return line.map((point, index) => {
    const before = line[closed ? (index - 1 + line.length) % line.length : Math.max(0, index - 1)];
    const after = line[closed ? (index + 1) % line.length : Math.min(line.length - 1, index + 1)];
    const length = Math.hypot(after.acrossMm - before.acrossMm, after.downMm - before.downMm);
    const sideways = (common + local[index]) / length;
    return {
      acrossMm: point.acrossMm + sideways * (after.downMm - before.downMm),
      downMm: point.downMm - sideways * (after.acrossMm - before.acrossMm),
    };
  });
}

interface Stretch {
  readonly alike: (line: RingMm) => RingMm;
  /** Skin that slopes is moved the way the camera leans, by its height. */
  readonly sloping: (line: RingMm) => RingMm;
}

function stretchBy({ uniform, normal }: Chance, scale: ScaleFacts): Stretch {
  const distanceMm = scale.distanceMm ?? DEFAULT_DISTANCE_MM;
  const heightMm = normal() * NAIL_HEIGHT_U_MM;
  const factor =
    1 +
    normal() * scale.printRelativeU +
    (normal() * scale.homographyResidualMm) / FIDUCIAL_LEVER_MM +
    heightMm / (distanceMm - heightMm) +
    normal() * LENS_RELATIVE_U;
  const slope = Math.tan((SKIN_SLOPE_U_DEG * Math.PI) / 180);
  const [slopeAcross, slopeDown] = [normal() * slope, normal() * slope];
  const lean = Math.tan((scale.tiltDeg * Math.PI) / 180);
  const azimuth = FULL_TURN * uniform();
  const alike = (line: RingMm): RingMm => scaled(line, factor);
  const sloping = (line: RingMm): RingMm =>
    alike(line).map(({ acrossMm, downMm }) => {
      // Heights are taken from the corner of nail and fold: only differences matter.
      const heightThere = slopeAcross * (acrossMm - 50) + slopeDown * (downMm - 34);
      return {
        acrossMm: acrossMm + heightThere * lean * Math.cos(azimuth),
        downMm: downMm + heightThere * lean * Math.sin(azimuth),
      };
    });
  return { alike, sloping };
}

/** The toe as a photo of this quality would be outlined. */
export function photographed(chance: Chance, truth: MeasureInput, scale: ScaleFacts): MeasureInput {
  const { erythema, nailFoldMargin, marginLateral, cutEdge } = truth.outlines;
  if (!erythema || !nailFoldMargin || !marginLateral || !cutEdge) throw new Error('the true toe is incomplete');
  const stretch = stretchBy(chance, scale);
  const margin = bend(chance, marginLateral, nailFoldMargin.boundaryUMm, false);
  // Plate and fold stand at different heights: a leaning camera moves one against the other.
  const lean = chance.normal() * GROOVE_STEP_U_MM * Math.tan((scale.tiltDeg * Math.PI) / 180) * Math.cos(FULL_TURN * chance.uniform());
  const ring = stretch.sloping(bend(chance, erythema.rings[0].ring, erythema.boundaryUMm, true));
  const edge = stretch.alike(bend(chance, cutEdge.line, cutEdge.boundaryUMm, false));
  const askew = (chance.normal() * AXIS_U_DEG.given * Math.PI) / 180;
  return {
    ...truth,
    scale,
    toeAxis: { across: -Math.sin(askew), down: Math.cos(askew) },
    outlines: {
      ...truth.outlines,
      erythema: region(ring, erythema.boundaryUMm),
      nailFoldMargin: { ...nailFoldMargin, line: stretch.sloping(margin) },
      marginLateral: stretch.alike(margin),
      cutEdge: { ...cutEdge, line: moved(edge, lean, 0) },
    },
  };
}
