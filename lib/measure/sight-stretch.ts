import type { PointMm } from '../units';
import { MOST_SIGHT_STRETCH, USUAL_SECTION } from './constants';
import { toToeFrame } from './toe-frame';
import { sectionAt, type ToeRelief } from './toe-relief';
import { sectionSlope } from './toe-section';

/**
 * How much an error in the picture grows, across the toe, when outlines are laid straight: skin that turns away from the lens
 * is seen foreshortened.
 *
 * @param relief the toe's body and the lens
 * @param flat a place of the toe, looked at straight from above, mm
 * @returns straightened length for one millimetre of the picture; under 1 where the skin faces the lens, held at a limit at the horizon
 * @example sightStretch(relief, onTopOfTheToe) // 1
 */
export function sightStretch(relief: ToeRelief, flat: PointMm): number {
  const { cylinder, lens, shape = USUAL_SECTION } = relief;
  const at = toToeFrame(flat, cylinder.axis);
  const lean = (at.acrossMm - toToeFrame(lens, cylinder.axis).acrossMm) / lens.heightMm;
  const { centreMm, halfWidthMm } = sectionAt(relief, at.downMm, lean);
  // A place at x is seen at x + lean · z(x).
  const shown = 1 + lean * sectionSlope(shape, (at.acrossMm - centreMm) / halfWidthMm);
  return shown > 1 / MOST_SIGHT_STRETCH ? 1 / shown : MOST_SIGHT_STRETCH;
}

/**
 * Length of all edges of a region, each piece counted as much as an error in the picture moves it.
 *
 * @param edges closed lists of points, straightened, mm
 * @param relief the toe's body and the lens; null counts every piece once
 * @returns mm: the change of the area for one millimetre by which the edge is wrong in the picture
 * @example sightPerimeterMm([[{ acrossMm: 0, downMm: 0 }, { acrossMm: 3, downMm: 0 }, { acrossMm: 0, downMm: 4 }]], null) // 12
 */
export function sightPerimeterMm(edges: readonly (readonly PointMm[])[], relief: ToeRelief | null): number {
  let sum = 0;
  for (const edge of edges) {
    edge.forEach((from, i) => {
      const to = edge[(i + 1) % edge.length];
      const [across, down] = [to.acrossMm - from.acrossMm, to.downMm - from.downMm];
      // Only an edge that runs along the toe is moved across it.
      sum += Math.hypot(across, down * (relief ? sightStretch(relief, from) : 1));
    });
  }
  return sum;
}
