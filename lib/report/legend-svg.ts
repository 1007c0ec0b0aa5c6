import { penText } from '../card/pen-text';
import type { Analysis } from '../pipeline/analysis';
import type { PointMm } from '../units';
import { ACCENT, INK, LETTER_MM, PAPER } from './constants';
import { type LegendLine, legendLines } from './legend-lines';
import { inkStroke } from './pen-stroke';
import { svgColour } from './svg-colour';
import { svgNumber, svgPath } from './svg-path';

const ROW_MM = 2.5;
const EDGE_MM = 1.2;
/** The sample of a line's pattern before its words. */
const SAMPLE_MM = 4.4;
const WORDS_AFTER_MM = 5.4;
const SMALL = 0.8;

/**
 * Height that the legend of an analysis needs, mm.
 * @example legendHeightMm(analysis) // 22.4
 */
export const legendHeightMm = (analysis: Analysis): number => legendLines(analysis).length * ROW_MM + 2 * EDGE_MM;

/**
 * A strip of paper with the legend of an analysis in the pen alphabet.
 *
 * @param analysis one photo's analysis
 * @param widthMm of the strip
 * @param topMm where the strip begins
 * @param heightMm of the strip
 * @example legendSvg(analysis, 44, 56, 22.4).startsWith('<rect') // true
 */
export function legendSvg(analysis: Analysis, widthMm: number, topMm: number, heightMm: number): string {
  const rows = legendLines(analysis).map((line, i) => legendRow(line, topMm + EDGE_MM + i * ROW_MM));
  return `<rect x="0" y="${svgNumber(topMm)}" width="${svgNumber(widthMm)}" height="${svgNumber(heightMm)}" fill="${svgColour(PAPER)}"/>${rows.join('')}`;
}

function legendRow({ text, style, accent, small }: LegendLine, downMm: number): string {
  const sample = `M${EDGE_MM} ${svgNumber(downMm + LETTER_MM / 2)}h${SAMPLE_MM}`;
  const drawn = style ? `<g fill="none" stroke-linecap="round">${inkStroke(sample, style, accent ? ACCENT : INK)}</g>` : '';
  const at = { acrossMm: EDGE_MM + (style ? WORDS_AFTER_MM : 0), downMm };
  return drawn + lettering(text, at, LETTER_MM * (small ? SMALL : 1));
}

/** Words are drawn with the card's own pen alphabet: no font has to be there. */
function lettering(text: string, at: PointMm, heightMm: number): string {
  const { rings } = penText(text, at, heightMm, INK);
  return `<path fill="${svgColour(INK)}" d="${rings.map((ring) => `${svgPath(ring)}Z`).join('')}"/>`;
}
