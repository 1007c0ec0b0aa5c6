import type { CardBaseline } from './card-baseline';
import type { CardKnowledge } from './card-knowledge';

/**
 * What the baseline photo tells of the card's print, for reading the same card in later photos.
 *
 * Whatever the baseline's tone curve got wrong, it gets wrong once: later photos are fitted to the same patches, and
 * the error cancels in every comparison.
 * @param baseline the card as read from the baseline photo
 * @returns the patches' light as it was read then
 * @example knowledgeFromBaseline(baseline).kind // 'home'
 */
export function knowledgeFromBaseline(baseline: CardBaseline): CardKnowledge {
  return {
    kind: baseline.kind,
    patches: new Map(baseline.patches.map(({ patch, light }) => [patch.name, light])),
    paperLight: baseline.paperLight,
  };
}
