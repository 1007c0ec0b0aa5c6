import { NOMINAL_BLACK, OFFICE_PAPER_LIGHT } from './constants';
import type { Patch } from '../card/card-geometry';
import type { LinearRgb } from './encodings';
import { decodeSrgb } from './decode-srgb';

/** A home card gives consistency from visit to visit; only a clinic card, with measured patches, absolute colour. */
export type CardColourKind = 'home' | 'clinic';

/** What is known of a printed card apart from its design. */
export interface CardKnowledge {
  readonly kind: CardColourKind;
  /** Light of patches relative to the card's bare paper, by patch name; empty where only the design is known. */
  readonly patches: ReadonlyMap<string, LinearRgb>;
  /** Light of the card's bare paper relative to a perfect diffuser under D65. */
  readonly paperLight: LinearRgb;
}

/** A card from a home printer at its first visit: nothing is known but the design. */
export const HOME_CARD: CardKnowledge = {
  kind: 'home',
  patches: new Map(),
  paperLight: { red: OFFICE_PAPER_LIGHT, green: OFFICE_PAPER_LIGHT, blue: OFFICE_PAPER_LIGHT },
};

/**
 * Light of one patch relative to bare paper, as far as it is known.
 * @param patch a patch of the card's design
 * @param knowledge what is known of this print
 * @returns the known light, or that of a nominal printer: the design's light above a black of 5 %
 * @example expectedLightOf(patch, HOME_CARD).red // 1
 */
export function expectedLightOf(patch: Patch, knowledge: CardKnowledge): LinearRgb {
  const known = knowledge.patches.get(patch.name);
  if (known) return known;
  const [red, green, blue] = patch.designSrgb.map((code) => NOMINAL_BLACK + (1 - NOMINAL_BLACK) * decodeSrgb(code));
  return { red, green, blue };
}
