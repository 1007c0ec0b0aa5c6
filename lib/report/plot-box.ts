import { FAINT_INK, INK_BLUE } from '../card/constants';
import { moveBox, scaleBox, type SheetBox, sheetStroke, sheetText } from './sheet-box';
import type { TrendPlot } from './trend-plot';

const TITLE_MM = 5;
/** Two of them stand beside each other on a page. */
const SCALE = 0.86;
const TICK_PT = 6;
const CAP_MM = 0.8;
const DOT_MM = 0.7;
/** How wide a digit of the ticks is, about: numbers stand left of their line, days under theirs. */
const DIGIT_MM = 1.2;

/**
 * A plot as a drawing on paper: millimetre grid, values with their bars, gaps as crosses, letters for what was done.
 *
 * @param title what is plotted, with its unit
 * @param plot its places, mm
 * @returns a box a little smaller than the plot
 * @example plotBox('Pain', trendPlot({ points: [], stretches: [], gapDays: [], lastDay: 15, leastTop: 10, events: [] })).heightMm // 51.44
 */
export function plotBox(title: string, plot: TrendPlot): SheetBox {
  const { baseMm, topMm, leftMm, heightMm } = plot;
  const rightMm = plot.dayTicks[plot.dayTicks.length - 1].atMm;
  const grid = [...plot.dayTicks.map(({ atMm }) => `M${atMm} ${topMm}V${baseMm}`), ...plot.valueTicks.map(({ atMm }) => `M${leftMm} ${atMm}H${rightMm}`)].join('');
  const strokes = [
    sheetStroke(grid, 0.1, FAINT_INK),
    sheetStroke(`M${leftMm} ${topMm}V${baseMm}H${rightMm}`, 0.25, INK_BLUE),
    ...plot.events.map(({ acrossMm, row }) => ({ ...sheetStroke(`M${acrossMm} ${topMm + 1 + 4 * row}V${baseMm}`, 0.15, INK_BLUE), dashesMm: [0.8, 0.8] })),
    ...plot.gapsMm.map((atMm) => sheetStroke(`M${atMm - 1} ${baseMm + 0.8}L${atMm + 1} ${baseMm + 2.8}M${atMm + 1} ${baseMm + 0.8}L${atMm - 1} ${baseMm + 2.8}`, 0.2)),
    ...plot.points.flatMap(({ acrossMm, whisker }) => (whisker === null ? [] : [sheetStroke(whiskerPath(acrossMm, whisker), 0.2)])),
    ...plot.lines.map((path) => sheetStroke(path, 0.35)),
    ...plot.points.map(({ acrossMm, downMm }) => ({ ...sheetStroke(dotPath(acrossMm, downMm), 0), filled: true })),
  ];
  const texts = [
    ...plot.valueTicks.map(({ atMm, text }) => sheetText(text, leftMm - 1 - DIGIT_MM * text.length, atMm + 0.8, TICK_PT)),
    ...plot.dayTicks.map(({ atMm, text }) => sheetText(text, atMm - (DIGIT_MM * text.length) / 2, baseMm + 5.5, TICK_PT)),
    ...plot.events.map(({ acrossMm, letter, row }) => sheetText(letter, acrossMm - DIGIT_MM / 2, topMm - 0.5 + 4 * row, TICK_PT, 'bold')),
  ];
  const drawn = moveBox(scaleBox({ heightMm, texts, strokes, pictures: [] }, SCALE), 0, TITLE_MM);
  return { ...drawn, heightMm: drawn.heightMm + TITLE_MM, texts: [sheetText(title, 0, TITLE_MM - 1.5, 9, 'bold'), ...drawn.texts] };
}

function whiskerPath(acrossMm: number, { fromMm, toMm, cutAtZero }: NonNullable<TrendPlot['points'][number]['whisker']>): string {
  const cap = (atMm: number) => `M${acrossMm - CAP_MM} ${atMm}h${2 * CAP_MM}`;
  return `M${acrossMm} ${toMm}V${fromMm}${cap(fromMm)}${cutAtZero ? '' : cap(toMm)}`;
}

/** A diamond is told apart from every line. */
const dotPath = (acrossMm: number, downMm: number): string => `M${acrossMm} ${downMm - DOT_MM}l${DOT_MM} ${DOT_MM}l${-DOT_MM} ${DOT_MM}l${-DOT_MM} ${-DOT_MM}Z`;
