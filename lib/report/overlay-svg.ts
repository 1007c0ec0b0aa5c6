/**
 * The pen on the photo: outlines as thin ink lines over the rectified picture, a faint millimetre grid, the reach as a
 * dimension line, and a legend with every number ± U. Words and line patterns tell the lines apart, never colour alone.
 */
import { penText } from '../card/pen-text';
import type { Srgb } from '../card/constants';
import type { Analysis } from '../pipeline/analysis';
import type { MapGrid } from '../rectify/millimetre-map';
import type { Region } from '../segment/segmentation';
import type { LineMm, PointMm } from '../units';
import { legendLines, type LegendLine } from './legend-lines';
import { reachLine } from './reach-line';

export interface OverlayPage {
  /** The window of the card that the picture shows. */
  readonly window: MapGrid;
  /** Height of the paper strip for the legend, below the picture. */
  readonly legendMm: number;
}

const INK: Srgb = [20, 32, 72];
const PAPER: Srgb = [252, 251, 247];
const ACCENT: Srgb = [176, 42, 96];
const LINE_MM = 0.2;
const HALO_MM = 0.5;
const LETTER_MM = 1.25;
const ROW_MM = 2.5;
const EDGE_MM = 1.2;

export type PenStyle = 'solid' | 'dashes' | 'dots' | 'dashDot' | 'fineDots';

const DASHES: Readonly<Record<PenStyle, string>> = {
  solid: '',
  dashes: '1.1 0.5',
  dots: '0.05 0.5',
  dashDot: '1 0.4 0.05 0.4',
  fineDots: '0.05 0.9',
};

/** Height that the legend of an analysis needs, mm. */
export const legendHeightMm = (analysis: Analysis): number => legendLines(analysis).length * ROW_MM + 2 * EDGE_MM;

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
  const shift = `translate(${fixed(-origin.acrossMm)} ${fixed(-origin.downMm)})`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${window.widthPx}" height="${Math.round((pictureMm + page.legendMm) * window.pxPerMm)}" viewBox="0 0 ${fixed(widthMm)} ${fixed(pictureMm + page.legendMm)}">`,
    millimetreGrid(widthMm, pictureMm, origin),
    `<g transform="${shift}" fill="none" stroke-linecap="round" stroke-linejoin="round">${penLines(analysis)}</g>`,
    legend(legendLines(analysis), widthMm, pictureMm, page.legendMm),
    '</svg>',
  ].join('\n');
}

/** A line each millimetre and a stronger one each five, counted in the card's own frame. */
function millimetreGrid(widthMm: number, heightMm: number, origin: PointMm): string {
  const lines: string[] = [];
  const add = (at: number, count: number, path: string) => {
    if (at >= 0) lines.push(`<path d="${path}" stroke-opacity="${count % 5 === 0 ? 0.3 : 0.12}"/>`);
  };
  for (let mm = Math.ceil(origin.acrossMm); mm - origin.acrossMm < widthMm; mm++) {
    const x = mm - origin.acrossMm;
    add(x, mm, `M${fixed(x)} 0V${fixed(heightMm)}`);
  }
  for (let mm = Math.ceil(origin.downMm); mm - origin.downMm < heightMm; mm++) {
    const y = mm - origin.downMm;
    add(y, mm, `M0 ${fixed(y)}H${fixed(widthMm)}`);
  }
  return `<g fill="none" stroke="${rgb(PAPER)}" stroke-width="0.06">${lines.join('')}</g>`;
}

function penLines(analysis: Analysis): string {
  const found = analysis.segmentation;
  if (!found) return '';
  const reach = found.erythema && found.nailFoldMargin && isGiven(analysis, 'reach') ? reachLine(found.erythema, found.nailFoldMargin.line) : null;
  return [
    found.reference && region(found.reference.region, 'fineDots'),
    found.nailPlate && region(found.nailPlate, 'dots'),
    found.nailFoldMargin && stroke(linePath(found.nailFoldMargin.line), 'dashes'),
    found.macerated && region(found.macerated, 'dots'),
    found.raw && region(found.raw, 'dashDot'),
    found.erythema && isGiven(analysis, 'erythemaArea') && region(found.erythema, 'solid'),
    reach && dimensionLine(reach.from, reach.to),
    found.erythema && isGiven(analysis, 'erythemaArea') && dateBeside(found.erythema, analysis.photo.capture.localTime),
  ]
    .filter(Boolean)
    .join('');
}

/** The day, written beside the line as with a pen on the skin: below its most proximal point. */
function dateBeside(redness: Region, localTime: string | null): string {
  if (!localTime) return '';
  const lowest = redness.rings.flatMap(({ ring }) => ring).reduce((low, point) => (point.downMm > low.downMm ? point : low));
  const { rings } = penText(localTime.slice(5, 10), { acrossMm: lowest.acrossMm - 2, downMm: lowest.downMm + 0.8 }, LETTER_MM, INK);
  const path = rings.map((ring) => `${linePath(ring)}Z`).join('');
  return `<path d="${path}" stroke="${rgb(PAPER)}" stroke-opacity="0.7" stroke-width="0.35"/><path d="${path}" fill="${rgb(INK)}"/>`;
}

function isGiven(analysis: Analysis, key: 'reach' | 'erythemaArea'): boolean {
  const measurement = analysis.measurement?.measurements[key];
  return measurement !== undefined && 'value' in measurement;
}

function region(one: Region, style: PenStyle): string {
  return stroke(one.rings.map(({ ring }) => `${linePath(ring)}Z`).join(''), style);
}

/** A pale halo under the ink keeps a line readable on any skin. */
function stroke(path: string, style: PenStyle, ink: Srgb = INK): string {
  const dash = DASHES[style] ? ` stroke-dasharray="${DASHES[style]}"` : '';
  const halo = `<path d="${path}" stroke="${rgb(PAPER)}" stroke-opacity="0.55" stroke-width="${HALO_MM}"${dash}/>`;
  return `${halo}<path d="${path}" stroke="${rgb(ink)}" stroke-width="${LINE_MM}"${dash}/>`;
}

/** A draughtsman's dimension: a straight line with a tick across either end. */
function dimensionLine(from: PointMm, to: PointMm): string {
  const lengthMm = Math.hypot(to.acrossMm - from.acrossMm, to.downMm - from.downMm) || 1;
  const across = (0.7 * (to.downMm - from.downMm)) / lengthMm;
  const down = (-0.7 * (to.acrossMm - from.acrossMm)) / lengthMm;
  const tick = (at: PointMm) =>
    linePath([
      { acrossMm: at.acrossMm - across, downMm: at.downMm - down },
      { acrossMm: at.acrossMm + across, downMm: at.downMm + down },
    ]);
  return stroke(linePath([from, to]) + tick(from) + tick(to), 'solid', ACCENT);
}

function legend(lines: readonly LegendLine[], widthMm: number, topMm: number, heightMm: number): string {
  const rows = lines.map((line, i) => {
    const y = topMm + EDGE_MM + i * ROW_MM;
    const sample = line.style
      ? `<g fill="none" stroke-linecap="round"><path d="M${EDGE_MM} ${fixed(y + LETTER_MM / 2)}h4.4" stroke="${rgb(line.accent ? ACCENT : INK)}" stroke-width="${LINE_MM}"${DASHES[line.style] ? ` stroke-dasharray="${DASHES[line.style]}"` : ''}/></g>`
      : '';
    return sample + lettering(line.text, { acrossMm: EDGE_MM + (line.style ? 5.4 : 0), downMm: y }, LETTER_MM * (line.small ? 0.8 : 1));
  });
  return `<rect x="0" y="${fixed(topMm)}" width="${fixed(widthMm)}" height="${fixed(heightMm)}" fill="${rgb(PAPER)}"/>${rows.join('')}`;
}

/** Words are drawn with the card's own pen alphabet: no font has to be there. */
function lettering(text: string, at: PointMm, heightMm: number): string {
  const { rings } = penText(text, at, heightMm, INK);
  return `<path fill="${rgb(INK)}" d="${rings.map((ring) => `${linePath(ring)}Z`).join('')}"/>`;
}

const linePath = (line: LineMm): string => line.map((p, i) => `${i === 0 ? 'M' : 'L'}${fixed(p.acrossMm)} ${fixed(p.downMm)}`).join('');
const rgb = (ink: Srgb): string => `rgb(${ink.join(',')})`;
const fixed = (value: number): string => value.toFixed(3);
