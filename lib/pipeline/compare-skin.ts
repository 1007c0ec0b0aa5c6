import { type IndexDifference, indexDifference } from '../measure/index-difference';
import { largestRing } from '../measure/largest-ring';
import { leanPoint } from '../measure/lean-point';
import { movePoint, registerToes } from '../measure/register-toes';
import { straightenPoint } from '../measure/toe-relief';
import type { PointMm } from '../units';
import type { Analysis } from './analysis';
import type { EarlierVisit } from './earlier-visit';
import { skinMap } from './skin-map';

/** Where this toe is redder than on one earlier photo. */
export interface SkinDifference extends IndexDifference {
  readonly photo: string;
  /** What is left over between the two plates laid upon each other, mm. */
  readonly registrationResidualMm: number;
}

/**
 * Compares the skin of a measured photo with earlier photos of the same toe, place by place.
 *
 * @param analysis this photo
 * @param earlier earlier visits; those without their skin at hand are left out
 * @returns one entry for each visit that could be compared
 * @example compareSkin({ ...analysis, measurement: null }, earlier) // []
 */
export function compareSkin(analysis: Analysis, earlier: readonly EarlierVisit[]): SkinDifference[] {
  const now = skinMap(analysis);
  const plate = largestRing(analysis.measurement?.outlines.nailPlate?.rings ?? []);
  const margin = analysis.segmentation?.nailFoldMargin ?? null;
  if (!now || plate === null || margin === null) return [];
  return earlier.flatMap(({ skin, nailPlate, photo }) => {
    // From this photo's plate to the earlier one: where a place of this photo was then.
    const move = skin ? registerToes(plate, nailPlate) : null;
    if (!skin || move === null) return [];
    const toEarlier = (point: PointMm): PointMm => {
      const then = movePoint(move, now.relief ? straightenPoint(now.relief, point) : point);
      return skin.relief ? leanPoint(skin.relief, then) : then;
    };
    const difference = indexDifference(now, skin, toEarlier, margin.line);
    return difference ? [{ ...difference, photo: photo ?? '', registrationResidualMm: move.residualMm }] : [];
  });
}
