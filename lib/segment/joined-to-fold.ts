import { mean } from 'd3-array';
import type { LineMm } from '../units';
import { comesWithin } from './comes-within';
import { JOINED_WITHIN_MM } from './constants';
import type { TracedMargin } from './nail-fold-margin';
import type { Piece } from './trace-pieces';

/**
 * Does redness belong to the treated fold? It does where it comes near the margin, or near a wound or soggy skin beside it.
 * Soggy skin can reach round the nail to the other fold: what is joined through such alone has to lie on the treated half.
 *
 * @param margin the treated margin, from its distal end to the middle of the proximal fold; null joins nothing
 * @param wounds raw and soggy pieces beside it
 * @example pieces.filter(joinedToFold(margin, wounds)) // the pieces within 1 mm of one of them
 */
export function joinedToFold(margin: Pick<TracedMargin, 'line' | 'side'> | null, wounds: readonly Pick<Piece, 'outer'>[]): (piece: Pick<Piece, 'outer'>) => boolean {
  if (margin === null) return () => false;
  const { line, side } = margin;
  const middleMm = line[line.length - 1].acrossMm;
  const isOnTreatedHalf = (outer: LineMm) => (mean(outer, ({ acrossMm }) => acrossMm) ?? NaN) < middleMm === (side === 'left');
  const isNear = (outer: LineMm, other: LineMm) => comesWithin(outer, other, JOINED_WITHIN_MM);
  return ({ outer }) => isNear(outer, line) || (isOnTreatedHalf(outer) && wounds.some((wound) => isNear(outer, wound.outer)));
}
