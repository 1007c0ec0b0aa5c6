import type { LineMm, PointMm } from '../units';
import { besideLine } from './beside-line';
import { MARGIN_SPACING_MM } from './constants';
import { largestRing } from './largest-ring';
import type { Outlines } from './measure-input';
import { resampleLine } from './resample-line';
import { ringCentroid } from './ring-centroid';

/** The treated margin, run so that the nail lies on its right and the fold on its left. */
export interface FoldSide {
  readonly line: LineMm;
  /** How far a point lies out on the fold, mm; negative toward the nail. null before and behind the margin's ends. */
  outMm(point: PointMm): number | null;
}

/**
 * Which side of the treated margin is the fold: the one where the nail plate is not.
 *
 * @param outlines of the toe
 * @returns null where margin or plate is missing
 * @example foldSide({ ...outlines, nailPlate: null }) // null
 */
export function foldSide({ nailFoldMargin, nailPlate }: Pick<Outlines, 'nailFoldMargin' | 'nailPlate'>): FoldSide | null {
  const plate = largestRing(nailPlate?.rings ?? []);
  const middle = plate && ringCentroid(plate);
  const line = nailFoldMargin ? resampleLine(nailFoldMargin.line, MARGIN_SPACING_MM) : [];
  if (!middle || line.length < 2) return null;
  const sign = besideLine(middle, line).mm > 0 ? -1 : 1;
  return {
    line,
    outMm: (point) => {
      const { mm, atEnd } = besideLine(point, line);
      return atEnd ? null : sign * mm;
    },
  };
}
