import type { PositionMm } from '../measure/line-to-json';
import type { AnalysisJson, OutlineJson } from '../pipeline/analysis-json';
import { svgNumber } from './svg-path';

/** What a pen would have drawn on one day, as SVG paths in card millimetres; null where there was nothing to draw. */
export interface PenLines {
  readonly redness: string | null;
  readonly raw: string | null;
  readonly margin: string | null;
  /** Where the date is written: below the most proximal point of the redness, else of the margin. */
  readonly dateAt: PositionMm | null;
  /** Least and greatest place of the toe: what to look at. */
  readonly toe: { readonly from: PositionMm; readonly to: PositionMm } | null;
}

/**
 * The pen lines of one analysis.
 *
 * @param outlines as the analysis's JSON has them
 * @example penLines(null).redness // null
 */
export function penLines(outlines: AnalysisJson['outlines']): PenLines {
  if (outlines === null) return { redness: null, raw: null, margin: null, dateAt: null, toe: null };
  const rednessPlaces = outlines.erythema?.flatMap(({ ring }) => ring) ?? [];
  const places = rednessPlaces.length > 0 ? rednessPlaces : (outlines.nailFoldMargin ?? []);
  const lowest = places.reduce<PositionMm | null>((low, at) => (low === null || at[1] > low[1] ? at : low), null);
  return {
    redness: ringsPath(outlines.erythema),
    raw: ringsPath(outlines.raw),
    margin: outlines.nailFoldMargin && linePath(outlines.nailFoldMargin),
    dateAt: lowest,
    toe: boxOf(outlines.toe?.flatMap(({ ring }) => ring) ?? []),
  };
}

const linePath = (line: readonly PositionMm[]): string => line.map(([across, down], at) => `${at === 0 ? 'M' : 'L'}${svgNumber(across)} ${svgNumber(down)}`).join('');

function ringsPath(rings: readonly OutlineJson[] | null): string | null {
  return rings === null || rings.length === 0 ? null : rings.map(({ ring }) => `${linePath(ring)}Z`).join('');
}

function boxOf(places: readonly PositionMm[]): PenLines['toe'] {
  if (places.length === 0) return null;
  const [acrosses, downs] = [places.map(([across]) => across), places.map(([, down]) => down)];
  return { from: [Math.min(...acrosses), Math.min(...downs)], to: [Math.max(...acrosses), Math.max(...downs)] };
}
