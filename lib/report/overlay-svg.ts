/**
 * The pen on the photo: outlines as thin ink lines over the rectified picture, a faint millimetre grid, the reach as a
 * dimension line, and a legend with every number ± U. Words and line patterns tell the lines apart, never colour alone.
 */
import { penText } from '../card/pen-text';
import type { Analysis } from '../pipeline/analysis';
import { outlinesToJson } from '../pipeline/analysis-json';
import type { MapGrid } from '../rectify/millimetre-map';
import { isMeasured } from '../result';
import type { Region } from '../segment/segmentation';
import type { PointMm } from '../units';
import { ACCENT, INK, LETTER_MM, PAPER } from './constants';
import { legendSvg } from './legend-svg';
import { millimetreGrid } from './millimetre-grid';
import { type PenLineName, penLines } from './pen-lines';
import { type PenStyle, penStroke } from './pen-stroke';
import { reachLine } from './reach-line';
import { svgColour } from './svg-colour';
import { svgNumber, svgPath } from './svg-path';

export interface OverlayPage {
  /** The window of the card that the picture shows. */
  readonly window: MapGrid;
  /** Height of the paper strip for the legend, below the picture. */
  readonly legendMm: number;
}

/**
 * The overlay as SVG, to be laid over the rectified picture; one user unit is one millimetre of the card.
 *
 * @param analysis one photo's analysis
 * @param page window and legend height
 * @example overlaySvg(analysis, page).startsWith('<svg') // true
 */
export function overlaySvg(analysis: Analysis, page: OverlayPage): string {
  const { window } = page;
  const widthMm = window.widthPx / window.pxPerMm;
  const pictureMm = window.heightPx / window.pxPerMm;
  const origin = { acrossMm: window.originAcrossMm, downMm: window.originDownMm };
  const shift = `translate(${svgNumber(-origin.acrossMm)} ${svgNumber(-origin.downMm)})`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${window.widthPx}" height="${Math.round((pictureMm + page.legendMm) * window.pxPerMm)}" viewBox="0 0 ${svgNumber(widthMm)} ${svgNumber(pictureMm + page.legendMm)}">`,
    millimetreGrid(widthMm, pictureMm, origin),
    `<g transform="${shift}" fill="none" stroke-linecap="round" stroke-linejoin="round">${inkOf(analysis)}</g>`,
    legendSvg(analysis, widthMm, pictureMm, page.legendMm),
    '</svg>',
  ].join('\n');
}

const STYLES: Readonly<Record<PenLineName, PenStyle>> = {
  referenceSkin: 'fineDots',
  nailPlate: 'dots',
  nailFoldMargin: 'dashes',
  macerated: 'dots',
  raw: 'dashDot',
  erythema: 'solid',
};

function inkOf(analysis: Analysis): string {
  const found = analysis.segmentation;
  if (!found) return '';
  const seen = outlinesToJson(found);
  const redness = isGiven(analysis, 'erythemaArea') ? found.erythema : null;
  const reach = redness && found.nailFoldMargin && isGiven(analysis, 'reach') ? reachLine(redness, found.nailFoldMargin.line) : null;
  return [
    ...penLines({ ...seen, erythema: redness && seen.erythema }).map(({ name, path }) => penStroke(path, STYLES[name])),
    reach && dimensionLine(reach.from, reach.to),
    redness && dateBeside(redness, analysis.photo.capture.localTime),
  ]
    .filter(Boolean)
    .join('');
}

/** The day, written beside the line as with a pen on the skin: below its most proximal point. */
function dateBeside(redness: Region, localTime: string | null): string {
  if (!localTime) return '';
  const lowest = redness.rings.flatMap(({ ring }) => ring).reduce((low, point) => (point.downMm > low.downMm ? point : low));
  const { rings } = penText(localTime.slice(5, 10), { acrossMm: lowest.acrossMm - 2, downMm: lowest.downMm + 0.8 }, LETTER_MM, INK);
  const path = rings.map((ring) => `${svgPath(ring)}Z`).join('');
  return `<path d="${path}" stroke="${svgColour(PAPER)}" stroke-opacity="0.7" stroke-width="0.35"/><path d="${path}" fill="${svgColour(INK)}"/>`;
}

function isGiven(analysis: Analysis, key: 'reach' | 'erythemaArea'): boolean {
  const measurement = analysis.measurement?.measurements[key];
  return measurement !== undefined && isMeasured(measurement);
}

/** A draughtsman's dimension: a straight line with a tick across either end. */
function dimensionLine(from: PointMm, to: PointMm): string {
  const lengthMm = Math.hypot(to.acrossMm - from.acrossMm, to.downMm - from.downMm) || 1;
  const across = (0.7 * (to.downMm - from.downMm)) / lengthMm;
  const down = (-0.7 * (to.acrossMm - from.acrossMm)) / lengthMm;
  const tick = (at: PointMm) =>
    svgPath([
      { acrossMm: at.acrossMm - across, downMm: at.downMm - down },
      { acrossMm: at.acrossMm + across, downMm: at.downMm + down },
    ]);
  return penStroke(svgPath([from, to]) + tick(from) + tick(to), 'solid', ACCENT);
}
