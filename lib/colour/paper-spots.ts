import type { WhiteSample } from './card-readings';
import { CLIPPED_FROM_CODE, SKIN_ON_PAPER } from './constants';
import { medianOf } from '../rectify/median-of';
import { decodeSrgb } from './decode-srgb';

/** Is any channel so bright that its true value may be lost? */
const isClipped = ({ code }: WhiteSample): boolean => Math.max(...code) >= CLIPPED_FROM_CODE;

/** How red a spot is, ln R/G under the standard curve: enough to tell skin from paper. */
const redness = ({ code }: WhiteSample): number => Math.log(decodeSrgb(code[0] + 1) / decodeSrgb(code[1] + 1));

/** Paper spots of one photo, sorted by what can be read from them. */
export interface PaperSpots {
  /** Bare paper, as far as can be told, with no channel clipped. */
  readonly usable: readonly WhiteSample[];
  /** Share of spots with a clipped channel, 0…1; NaN without spots. */
  readonly clippedShare: number;
  /** Median over all spots of the brightest channel's code value; NaN without spots. */
  readonly level: number;
}

/**
 * Sorts the spots where paper should be bare: clipped ones and ones that a finger or toe lies on are set aside.
 * @param spots code values of small spots all over the card
 * @returns the usable spots, and what the light gates need of the others
 * @example sortPaperSpots([]).usable.length // 0
 */
export function sortPaperSpots(spots: readonly WhiteSample[]): PaperSpots {
  const unclipped = spots.filter((spot) => !isClipped(spot));
  const usualRedness = medianOf(unclipped.map(redness));
  return {
    usable: unclipped.filter((spot) => redness(spot) < usualRedness + SKIN_ON_PAPER),
    clippedShare: spots.length > 0 ? 1 - unclipped.length / spots.length : NaN,
    level: medianOf(spots.map(({ code }) => Math.max(...code))),
  };
}
