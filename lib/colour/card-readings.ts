/**
 * What was read off the card in one photo, as plain numbers in code values. Medians, not means: the median of code
 * values is the code value of the median light, whatever the phone's tone curve; the mean is neither.
 */
import type { Patch } from '../card/card-geometry';
import type { PointMm } from '../units';
import type { Vector3 } from './multiply-matrix-vector';

/** Code values 0…255 of red, green, blue. */
export type CodeTriple = Vector3;

export interface PatchReading {
  readonly patch: Patch;
  /** Median per channel over the patch's inner part, 0…255. */
  readonly codeMedian: CodeTriple;
  /** Share of the patch's pixels with any channel at the end of its range, 0…1. */
  readonly clippedShare: number;
  /** Robust spread (1.4826 · MAD) of the green code values inside the patch: ink structure, noise, dirt, shadow edge. */
  readonly spread: number;
}

/** A small spot of unprinted card. */
export interface WhiteSample extends PointMm {
  /** Median per channel, 0…255. */
  readonly code: CodeTriple;
}
