import { mean } from 'd3-array';
import { toCard } from '../../../lib/rectify/homography';
import type { AnalysisJson } from '../../../lib/pipeline/analysis-json';
import type { Measurement } from '../../../lib/result';
import type { CommonTruth, Pair } from './common-truth';

const NOMINAL_BAR_MM = 50;

/** One photo's errors; null where there is nothing to compare. */
export interface PhotoScore {
  readonly truth: CommonTruth;
  readonly measured: boolean;
  readonly gates: readonly string[];
  readonly whyNoRedness: string | null;
  readonly area: Compared | null;
  readonly reach: Compared | null;
  readonly unrolledArea: Compared | null;
  readonly unrolledReach: Compared | null;
  readonly groove: Compared | null;
  readonly raw: Compared | null;
  /** Redness reported where the truth has none, mm². */
  readonly falseAreaMm2: number | null;
  /** Squared distances between the found and the true margin, both ways, mm². */
  readonly marginSquaresMm2: readonly number[];
  readonly lengthRelError: number | null;
  readonly tiltErrorDeg: number | null;
  readonly distanceErrorMm: number | null;
}

export interface Compared {
  readonly truth: number;
  readonly error: number;
  readonly U: number;
}

export function scorePhoto(truth: CommonTruth, json: AnalysisJson): PhotoScore {
  const numbers = truth.measurements;
  const red = (numbers?.erythemaArea ?? 0) > 0;
  const { measurements } = json;
  const area = measurements.erythemaArea;
  const clean = truth.expectedGate === null && json.measured;
  return {
    truth,
    measured: json.measured,
    gates: json.reasons.map((reason) => reason.gate),
    whyNoRedness: 'notMeasured' in area ? area.notMeasured : null,
    area: clean && red ? compared(area, numbers?.erythemaArea) : null,
    reach: clean && red ? compared(measurements.reach, numbers?.reach) : null,
    unrolledArea: clean && red ? compared(measurements.unrolledArea, numbers?.unrolledArea) : null,
    unrolledReach: clean && red ? compared(measurements.unrolledReach, numbers?.unrolledReach) : null,
    groove: clean ? compared(measurements.grooveWidth, numbers?.grooveWidth) : null,
    raw: clean && (numbers?.rawArea ?? 0) > 0 ? compared(measurements.rawArea, numbers?.rawArea) : null,
    falseAreaMm2: clean && !red ? ('value' in area ? area.value : 0) : null,
    marginSquaresMm2: clean && json.outlines?.nailFoldMargin ? marginSquares(inTruthFrame(json, truth, json.outlines.nailFoldMargin), truth.nailFoldMargin) : [],
    lengthRelError: json.card && truth.checkPoints ? lengthError(json, truth.checkPoints) : null,
    tiltErrorDeg: json.card && json.card.tiltDeg - truth.tiltDeg,
    distanceErrorMm: json.card && json.card.distanceMm - truth.distanceMm,
  };
}

function compared(measurement: Measurement, truth: number | null | undefined): Compared | null {
  if (!('value' in measurement) || truth === null || truth === undefined) return null;
  return { truth, error: measurement.value - truth, U: measurement.U };
}

function marginSquares(found: readonly Pair[], truth: readonly Pair[]): number[] {
  if (truth.length === 0) return [];
  const every = (line: readonly Pair[], spacing: number) => line.filter((_, i) => i % spacing === 0);
  return [...every(found, 2).map((p) => squaredToLine(p, truth)), ...every(truth, 8).map((p) => squaredToLine(p, found))];
}

/**
 * A card that was printed too small or too large has shrunk or grown about a point that each renderer chooses for itself. There
 * the two frames are laid upon each other by the mean of the check points, without turning or stretching either.
 */
function inTruthFrame({ card }: AnalysisJson, { barReadsMm, checkPoints }: CommonTruth, line: readonly Pair[]): readonly Pair[] {
  if (barReadsMm === NOMINAL_BAR_MM || !card || !checkPoints) return line;
  const found = checkPoints.imagePx.map(([column, row]) => toCard(card.homography, { column, row }));
  const across = mean(found, ({ acrossMm }, i) => acrossMm - checkPoints.cardMm[i][0]) ?? 0;
  const down = mean(found, ({ downMm }, i) => downMm - checkPoints.cardMm[i][1]) ?? 0;
  return line.map(([x, y]) => [x - across, y - down]);
}

function squaredToLine([x, y]: Pair, line: readonly Pair[]): number {
  let best = Infinity;
  for (let i = 1; i < line.length; i++) {
    const [ax, ay] = line[i - 1];
    const dx = line[i][0] - ax;
    const dy = line[i][1] - ay;
    const share = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    best = Math.min(best, (x - ax - share * dx) ** 2 + (y - ay - share * dy) ** 2);
  }
  return best;
}

/** Longest line between two check points in the notch, measured through our homography. */
function lengthError(json: AnalysisJson, { imagePx, cardMm }: NonNullable<CommonTruth['checkPoints']>): number | null {
  if (!json.card || imagePx.length < 2) return null;
  const { homography } = json.card;
  const last = imagePx.length - 1;
  const [a, b] = [imagePx[0], imagePx[last]].map(([column, row]) => toCard(homography, { column, row }));
  const found = Math.hypot(b.acrossMm - a.acrossMm, b.downMm - a.downMm);
  const truth = Math.hypot(cardMm[last][0] - cardMm[0][0], cardMm[last][1] - cardMm[0][1]);
  return found / truth - 1;
}
