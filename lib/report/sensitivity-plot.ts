import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { SensitivityFigures } from './method-figures';

type Factor = SensitivityFigures['factors'][number];

/** Places on millimetre paper; the origin is the upper left corner. */
export interface SensitivityPlot {
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly baseMm: number;
  readonly topMm: number;
  readonly leftMm: number;
  readonly rightMm: number;
  /** Every photo's error without its sign. */
  readonly dots: readonly { readonly acrossMm: number; readonly downMm: number; readonly refused: boolean }[];
  /** Path of the median stated uncertainty, k = 2. */
  readonly uPath: string;
  /** Where the gate begins to refuse; null where none limits this factor. */
  readonly gateMm: number | null;
  readonly levelTicks: readonly { readonly atMm: number; readonly text: string }[];
  readonly valueTicks: readonly { readonly atMm: number; readonly text: string }[];
}

const [LEFT, TOP, WIDTH, HEIGHT, BELOW] = [10, 4, 60, 30, 8];
const SIDE = 6;
const STEPS: Readonly<Record<string, readonly number[]>> = { area: [0.1, 0.2, 0.25, 0.5], length: [0.25, 0.5, 1, 2] };
const ROWS = 4;

/**
 * The error of one measurand against one thing about the photo, with the stated uncertainty over it.
 *
 * @param factor what was turned, with its levels in order
 * @param measurand key of the figures; areas are read as shares of the truth, others as millimetres
 * @returns places in millimetres of the paper; the same stands in the table beside it
 * @example sensitivityPlot({ name: 'tilt', unit: '°', gate: null, baseLevel: 0, levels: [] }, 'reach').gateMm // null
 */
export function sensitivityPlot({ name, unit, gate, levels }: Factor, measurand: string): SensitivityPlot {
  const isArea = measurand.endsWith('Area');
  const found = levels.map(({ measurands }) => measurands[measurand]);
  const top = Math.max(0, ...found.flatMap(({ errors, medianU }) => [...errors.map(Math.abs), medianU ?? 0]));
  const steps = STEPS[isArea ? 'area' : 'length'];
  const step = steps.find((one) => one * ROWS >= top) ?? Math.ceil(top / ROWS);
  const downOf = scaleLinear([0, step * ROWS], [TOP + HEIGHT, TOP]);
  const acrossOf = placesOf(levels.length);
  const withU = found.flatMap(({ medianU }, at): [number, number][] => (medianU === null ? [] : [[acrossOf(at), downOf(medianU)]]));
  return {
    title: unit === '' ? name : `${name}, ${unit}`,
    widthMm: LEFT + WIDTH + 2,
    heightMm: TOP + HEIGHT + BELOW,
    baseMm: TOP + HEIGHT,
    topMm: TOP,
    leftMm: LEFT,
    rightMm: LEFT + WIDTH,
    dots: levels.flatMap(({ refused, photos }, at) => found[at].errors.map((error, i) => ({ acrossMm: acrossOf(at) + i - 1, downMm: downOf(Math.abs(error)), refused: refused === photos }))),
    uPath: withU.length > 0 ? (line()(withU) ?? '') : '',
    gateMm: gate && gatePlace(levels.map(({ level }) => level), gate.limit, acrossOf),
    levelTicks: levels.map(({ level }, at) => ({ atMm: acrossOf(at), text: String(level) })),
    valueTicks: Array.from({ length: ROWS + 1 }, (_, row) => ({ atMm: downOf(row * step), text: isArea ? `${Math.round(100 * row * step)} %` : (row * step).toFixed(step < 0.5 ? 2 : 1) })),
  };
}

/** Levels stand side by side at equal distances: some are words. */
function placesOf(levels: number): (at: number) => number {
  const spacing = levels > 1 ? (WIDTH - 2 * SIDE) / (levels - 1) : 0;
  return (at) => LEFT + SIDE + at * spacing;
}

/** Between the two levels that the limit lies between. */
function gatePlace(levels: readonly (number | string)[], limit: number, acrossOf: (at: number) => number): number | null {
  const above = levels.findIndex((level) => typeof level === 'number' && level > limit);
  const [from, to] = [levels[above - 1], levels[above]];
  if (above < 1 || typeof from !== 'number' || typeof to !== 'number') return null;
  return acrossOf(above - 1) + ((limit - from) / (to - from)) * (acrossOf(above) - acrossOf(above - 1));
}
