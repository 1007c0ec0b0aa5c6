import type { Procedure } from './procedure';

/**
 * On which side of the picture the treated fold lies, with the toe pointing up it: the medial side is the one toward the other foot.
 *
 * @param procedure foot and treated sides as recorded on the day
 * @returns 'both' where both sides were treated; null where foot or side is not on record
 * Anatomy: seen from above with the toes away from the body, a left big toe has its medial side on the right.
 * @example sideInPicture({ foot: 'left', treatedSides: ['medial'] }) // 'right'
 */
export function sideInPicture({ foot, treatedSides }: Pick<Procedure, 'foot' | 'treatedSides'>): 'left' | 'right' | 'both' | null {
  const [side, other] = treatedSides ?? [];
  if (side && other) return 'both';
  if (!foot || !side) return null;
  return (foot === 'left') === (side === 'medial') ? 'right' : 'left';
}
