import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';

/** One value on the plot. */
export interface PlotPoint {
  /** Days since the procedure. */
  readonly day: number;
  readonly value: number;
  /** Expanded uncertainty, k = 2; null where the value is a word of the patient's and has none. */
  readonly U: number | null;
}

export interface PlotWords {
  readonly points: readonly PlotPoint[];
  /** Lines are drawn within a stretch, never between two. */
  readonly stretches: readonly (readonly [fromDay: number, toDay: number])[];
  /** Days of photos that gave no value. */
  readonly gapDays: readonly number[];
  /** The axis reaches at least this day, the same for every plot of a page. */
  readonly lastDay: number;
  /** The axis reaches at least this value; 10 for pain. */
  readonly leastTop: number;
  readonly events: readonly { readonly day: number; readonly letter: string }[];
}

/** Places on millimetre paper; the origin is the upper left corner. */
export interface TrendPlot {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The zero line and the upper end of the value axis. */
  readonly baseMm: number;
  readonly topMm: number;
  readonly leftMm: number;
  readonly points: readonly { readonly acrossMm: number; readonly downMm: number; readonly whisker: Whisker | null }[];
  readonly lines: readonly string[];
  readonly gapsMm: readonly number[];
  readonly events: readonly { readonly acrossMm: number; readonly letter: string; readonly row: number }[];
  readonly dayTicks: readonly Tick[];
  readonly valueTicks: readonly Tick[];
}

/** `cutAtZero`: the band reaches below zero, where nothing can be. */
export interface Whisker {
  readonly fromMm: number;
  readonly toMm: number;
  readonly cutAtZero: boolean;
}

interface Tick {
  readonly atMm: number;
  readonly text: string;
}

const [LEFT, TOP, WIDTH, HEIGHT] = [10, 6, 80, 40];
/** A bold line of the paper every ten millimetres carries a number. */
const [COLUMNS, ROWS] = [8, 4];
const DAY_STEPS = [1, 2, 3, 5, 7, 10, 14, 21, 28, 56];
const MANTISSAS = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];
/** Letters nearer to each other than this would lie on one another. */
const LETTER_MM = 4;

/**
 * Places of a series on millimetre paper: zero is always on it, days and values fall on bold lines, gaps stay gaps.
 *
 * @param words points oldest first, with what else stands on the time axis
 * @returns places in millimetres of the paper and SVG paths; all of it is in the table beside the plot as well
 * @example trendPlot({ points: [], stretches: [], gapDays: [], lastDay: 15, leastTop: 0, events: [] }).dayTicks[1] // { atMm: 20, text: '2' }
 */
export function trendPlot(words: PlotWords): TrendPlot {
  const dayStep = DAY_STEPS.find((step) => step * COLUMNS >= words.lastDay) ?? Math.ceil(words.lastDay / COLUMNS);
  const valueStep = niceStep(Math.max(words.leastTop, ...words.points.map(({ value, U }) => value + (U ?? 0))) / ROWS);
  const acrossOf = scaleLinear([0, dayStep * COLUMNS], [LEFT, LEFT + WIDTH]);
  const downOf = scaleLinear([0, valueStep * ROWS], [TOP + HEIGHT, TOP]);
  return {
    widthMm: LEFT + WIDTH + 4,
    heightMm: TOP + HEIGHT + 8,
    baseMm: TOP + HEIGHT,
    topMm: TOP,
    leftMm: LEFT,
    points: words.points.map(({ day, value, U }) => ({
      acrossMm: round(acrossOf(day)),
      downMm: round(downOf(value)),
      whisker: U === null ? null : { fromMm: round(downOf(value + U)), toMm: round(downOf(Math.max(0, value - U))), cutAtZero: value < U },
    })),
    lines: joined(words).map((run) => pathOf(run.map(({ day, value }): [number, number] => [round(acrossOf(day)), round(downOf(value))]))),
    gapsMm: words.gapDays.map((day) => round(acrossOf(day))),
    events: inRows(words.events.map(({ day, letter }) => ({ acrossMm: round(acrossOf(day)), letter }))),
    dayTicks: ticks(COLUMNS, dayStep, acrossOf),
    // Without a value there is no scale, only the line of the days.
    valueTicks: ticks(words.points.length > 0 || words.leastTop > 0 ? ROWS : 0, valueStep, downOf),
  };
}

const pathOf = (run: [number, number][]): string => line()(run) ?? '';
const round = (lengthMm: number): number => Math.round(lengthMm * 100) / 100;

function ticks(count: number, step: number, placeOf: (value: number) => number): Tick[] {
  return Array.from({ length: count + 1 }, (_, at) => ({ atMm: placeOf(at * step), text: String(Number((at * step).toPrecision(6))) }));
}

/** The smallest of the mantissas times a power of ten that reaches so far; 1 where there is nothing. */
function niceStep(wanted: number): number {
  if (!(wanted > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(wanted));
  return power * (MANTISSAS.find((mantissa) => mantissa * power >= wanted * (1 - 1e-9)) ?? 10);
}

/** Runs of two and more points within one stretch; a point by itself has no line. */
const joined = ({ points, stretches }: PlotWords): PlotPoint[][] =>
  stretches.map(([from, to]) => points.filter(({ day }) => day >= from && day <= to)).filter((run) => run.length > 1);

/** Letters that would lie on one another go up by rows. */
function inRows(events: readonly { acrossMm: number; letter: string }[]): TrendPlot['events'] {
  const ends: number[] = [];
  return [...events]
    .sort((a, b) => a.acrossMm - b.acrossMm)
    .map((event) => {
      const free = ends.findIndex((end) => event.acrossMm - end >= LETTER_MM);
      const row = free < 0 ? ends.length : free;
      ends[row] = event.acrossMm;
      return { ...event, row };
    });
}
