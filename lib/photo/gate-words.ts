import type { GateId } from './reasons';

/** Each gate in the few words in which staff speak of it. */
const WORDS: Readonly<Record<GateId, string>> = {
  cardNotFound: 'no card seen',
  tooFewFiducials: 'card half covered',
  wrongCard: 'another card',
  mirrored: 'mirrored picture',
  tilt: 'camera too slanted',
  resolution: 'camera too far away',
  blur: 'blurred',
  clipped: 'too bright',
  tooDark: 'too dark',
  unevenLight: 'shadow across the card',
  glare: 'nail shines',
  toeNotInNotch: 'toe not in the notch',
  notAPhotograph: 'not a photo',
  captureTime: 'taken at another time',
  duplicate: 'sent before',
};

/**
 * A gate in words for a sentence that staff read. Episodes may come from outside with gates of their own.
 *
 * @param gate id of a gate
 * @returns its words; an unknown id as it is
 * @example gateWords('unevenLight') // 'shadow across the card'
 */
export function gateWords(gate: string): string {
  return Object.hasOwn(WORDS, gate) ? WORDS[gate as GateId] : gate;
}
