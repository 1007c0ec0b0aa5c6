import type { PositionMm } from '../measure/line-to-json';
import type { OutlinesJson } from '../pipeline/analysis-json';

/** Places that a drawing of outlines needs beside the lines themselves. */
export interface LinePlaces {
  /** Where the date is written: below the most proximal point of the redness, else of the margin. */
  readonly dateAt: PositionMm | null;
  /** Least and greatest place of the toe: what to look at. */
  readonly toe: { readonly from: PositionMm; readonly to: PositionMm } | null;
}

/**
 * Where the date stands and what to look at.
 *
 * @param outlines as an analysis has them, mm on the card; null where nothing was found
 * @example linePlaces(null) // { dateAt: null, toe: null }
 */
export function linePlaces(outlines: Partial<OutlinesJson> | null): LinePlaces {
  const redness = outlines?.erythema?.flatMap(({ ring }) => ring) ?? [];
  const places = redness.length > 0 ? redness : (outlines?.nailFoldMargin ?? []);
  const dateAt = places.reduce<PositionMm | null>((low, at) => (low === null || at[1] > low[1] ? at : low), null);
  return { dateAt, toe: boxOf(outlines?.toe?.flatMap(({ ring }) => ring) ?? []) };
}

function boxOf(places: readonly PositionMm[]): LinePlaces['toe'] {
  if (places.length === 0) return null;
  const [acrosses, downs] = [places.map(([across]) => across), places.map(([, down]) => down)];
  return { from: [Math.min(...acrosses), Math.min(...downs)], to: [Math.max(...acrosses), Math.max(...downs)] };
}
