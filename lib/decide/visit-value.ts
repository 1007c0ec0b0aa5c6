import type { Followed } from '../care/measurement-schema';
import { medianOfSorted } from '../trend/median-of-sorted';
import type { Visit } from './visits';

/** A number of one visit. */
export interface VisitValue {
  readonly value: number;
  /** Standard uncertainty. Photos of one visit share light and posture, so several do not make it smaller. */
  readonly u: number;
  /** The lowest of several photos of this visit; null where there is only one. */
  readonly lowestOfSeveral: number | null;
  readonly visit: Visit;
  readonly photos: readonly string[];
}

/**
 * The value of a measurand at a visit: that of its usable photo, the median where it has several.
 *
 * @param visit as known at the moment
 * @param measurand its name
 * @returns null where no usable photo has a value; "nothing found" is no value and never zero
 * @example visitValue(visit, 'reach')?.value // 4.2
 */
export function visitValue(visit: Visit, measurand: Followed): VisitValue | null {
  const known = visit.values.get(measurand);
  if (known !== undefined) return known;
  const found = readVisitValue(visit, measurand);
  visit.values.set(measurand, found);
  return found;
}

function readVisitValue(visit: Visit, measurand: Followed): VisitValue | null {
  const values: number[] = [];
  const photos: string[] = [];
  let sumU = 0;
  for (const { measurements, name } of visit.usablePhotos) {
    const found = measurements[measurand];
    if (found === undefined || 'notMeasured' in found) continue;
    values.push(found.value);
    photos.push(name);
    sumU += found.u;
  }
  if (values.length === 0) return null;
  values.sort((a, b) => a - b);
  return { value: medianOfSorted(values), u: sumU / values.length, lowestOfSeveral: values.length > 1 ? values[0] : null, visit, photos };
}

/**
 * Reach of a visit: unrolled where it was measured, else projected.
 *
 * @param visit as known at the moment
 * @example visitValueOfReach(visit)?.value // 4.2
 */
export const visitValueOfReach = (visit: Visit): VisitValue | null => visitValue(visit, 'unrolledReach') ?? visitValue(visit, 'reach');
