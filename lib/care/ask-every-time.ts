import { DARKER_SKIN_BELOW_ITA_DEG } from './constants';
import type { Risk } from './risks';

export type AskedEveryTime = 'warmth' | 'swelling' | 'pain' | 'discharge';

/**
 * Questions that may not be left out for this person: where skin tone hides redness, or nerves hide pain.
 *
 * @param itaDeg individual typology angle of the newest usable photo, degrees; null where none is known
 * @param risks the episode's risks
 * @returns in the order they are asked; empty where nothing is hidden. Low redness never shortens the list.
 * @example askEveryTime(-12, []) // ['warmth', 'swelling', 'pain', 'discharge']
 */
export function askEveryTime(itaDeg: number | null, risks: readonly Risk[]): AskedEveryTime[] {
  const hidden = (itaDeg !== null && itaDeg < DARKER_SKIN_BELOW_ITA_DEG) || risks.includes('neuropathy');
  return hidden ? ['warmth', 'swelling', 'pain', 'discharge'] : [];
}
