import type { PositionMm } from '../measure/line-to-json';
import type { OutlineJson, OutlinesJson } from '../pipeline/analysis-json';
import { svgNumber } from './svg-path';

/** What is drawn with a pen; what is to lie on top comes last. */
export const PEN_LINES = ['referenceSkin', 'nailPlate', 'nailFoldMargin', 'macerated', 'raw', 'erythema'] as const;
export type PenLineName = (typeof PEN_LINES)[number];

export interface PenLine {
  readonly name: PenLineName;
  /** The `d` of an SVG path. */
  readonly path: string;
}

/** Where a place of the card lies on what is drawn upon. */
export type PlaceOn = (at: PositionMm) => readonly [number, number];

/** Upon the card itself: one user unit is one millimetre. */
const ON_CARD: PlaceOn = (at) => at;

/**
 * Outlines as the paths of a pen, upon the card or upon a picture of it.
 *
 * @param outlines as an analysis has them, mm on the card; null where nothing was found
 * @param placeOn the card's place upon what is drawn upon; the card itself without it
 * @returns one path for each kind of outline that was found; an area closes, the margin stays open
 * @example penLines({ nailFoldMargin: [[0, 0], [2, 1]] }) // [{ name: 'nailFoldMargin', path: 'M0.000 0.000L2.000 1.000' }]
 */
export function penLines(outlines: Partial<OutlinesJson> | null, placeOn: PlaceOn = ON_CARD): PenLine[] {
  return PEN_LINES.flatMap((name) => {
    const path = name === 'nailFoldMargin' ? linePath(outlines?.nailFoldMargin ?? [], placeOn) : ringsPath(outlines?.[name] ?? [], placeOn);
    return path === '' ? [] : [{ name, path }];
  });
}

const ringsPath = (rings: readonly OutlineJson[], placeOn: PlaceOn): string =>
  rings
    .map(({ ring }) => linePath(ring, placeOn))
    .map((path) => (path === '' ? '' : `${path}Z`))
    .join('');

function linePath(line: readonly PositionMm[], placeOn: PlaceOn): string {
  if (line.length < 2) return '';
  return line.map((at, place) => `${place === 0 ? 'M' : 'L'}${placeOn(at).map(svgNumber).join(' ')}`).join('');
}
