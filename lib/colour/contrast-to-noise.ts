import { MAD_TO_SIGMA } from '../rectify/constants';
import { LEAST_REFERENCE_VALUES, QUANTISATION_EI } from './constants';
import { medianOf } from '../rectify/median-of';

export interface ContrastToNoise {
  /** Median index of the region minus that of the reference skin, EI. */
  readonly excessEi: number;
  /** Robust standard deviation of the index in the reference skin, EI. */
  readonly spreadEi: number;
  /** excessEi / spreadEi; negative where the region is less red. */
  readonly ratio: number;
}

/**
 * How far a region's redness stands out from what the same person's skin in the same photo scatters by.
 * @param regionEi erythema index inside the region's plateau; NaN entries are left out
 * @param referenceEi erythema index of reference skin; NaN entries are left out
 * @returns excess, spread and their ratio; null where either has fewer than 30 values to take a median of
 * Source: contrast over noise as usual in imaging, with median and MAD in place of mean and standard deviation, since
 * hairs and highlights lie in every skin patch.
 * @example contrastToNoise([], []) // null
 */
export function contrastToNoise(
  regionEi: ArrayLike<number>,
  referenceEi: ArrayLike<number>,
): ContrastToNoise | null {
  const region = Array.from(regionEi).filter(Number.isFinite);
  const reference = Array.from(referenceEi).filter(Number.isFinite);
  if (Math.min(region.length, reference.length) < LEAST_REFERENCE_VALUES) return null;
  const level = medianOf(reference);
  const spread = MAD_TO_SIGMA * medianOf(reference.map((value) => Math.abs(value - level)));
  const spreadEi = Math.max(spread, QUANTISATION_EI);
  const excessEi = medianOf(region) - level;
  return { excessEi, spreadEi, ratio: excessEi / spreadEi };
}
