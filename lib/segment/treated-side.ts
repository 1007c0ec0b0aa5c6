import type { PointMm } from '../units';
import { LEAST_GROOVE_MM2, MARGIN_LEVEL } from './constants';
import type { TissueFields, ToldSide, TreatedSide } from './segmentation';

/**
 * The treated side: the half of the nail unit in which the margin's field is stronger, and in which the strip of plate is
 * missing. A margin that is swollen over or covered speaks softly; the groove beside it is a square centimetre and does not.
 *
 * @param fields tissue fields
 * @param ring points along the nail unit's outline
 * @param heard the margin's field at each of them
 * @param middleMm where the nail unit's halves meet
 * @param told the side on record: it outweighs either witness and not both, for a record may be wrong too; where both sides
 *   were treated the one that speaks louder is taken
 * @returns null where nothing is on record and the two witnesses together do not lean to a side
 * @example treatedSide(fields, ring, heard, 42, null) // 'left'
 */
export function treatedSide({ grid, groove }: TissueFields, ring: readonly PointMm[], heard: readonly number[], middleMm: number, told: ToldSide | null): TreatedSide | null {
  const margin = leftShare(ring.map(({ acrossMm }, i) => ({ onLeft: acrossMm < middleMm, amount: heard[i] })));
  const middleColumn = (middleMm - grid.originAcrossMm) * grid.pxPerMm;
  let [left, all] = [0, 0];
  for (let i = 0; i < groove.length; i++) {
    if (groove[i] < MARGIN_LEVEL) continue;
    all += groove[i];
    if (i % grid.widthPx < middleColumn) left += groove[i];
  }
  const strip = all / grid.pxPerMm ** 2 < LEAST_GROOVE_MM2 ? 0.5 : left / all;
  const record = told === 'left' ? RECORD_WEIGHT : told === 'right' ? -RECORD_WEIGHT : 0;
  const lean = margin + strip + record - 1;
  if (told === null && Math.abs(lean) < LEAST_LEAN) return null;
  return lean > 0 ? 'left' : 'right';
}

/** Between one witness and two, each of which speaks for a side with −1 … 1 halves. */
const RECORD_WEIGHT = 0.7;
/** Of 1 at most. On own phantoms (192, seeds 1, 7 and 11) it never fell below 0.6; a third of that is no answer. */
const LEAST_LEAN = 0.2;

function leftShare(amounts: readonly { readonly onLeft: boolean; readonly amount: number }[]): number {
  const all = amounts.reduce((sum, { amount }) => sum + amount, 0);
  return all === 0 ? 0.5 : amounts.reduce((sum, { onLeft, amount }) => sum + (onLeft ? amount : 0), 0) / all;
}
