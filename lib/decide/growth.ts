import { detectableChange } from '../trend/detectable-change';
import { compareReaches } from './compare';
import { MEDIAN_OF } from './constants';
import type { View } from './view';
import type { VisitValue } from './visit-value';
import type { Visit } from './visits';

export interface Growth {
  readonly newest: VisitValue;
  /** The visit before the newest. */
  readonly before: VisitValue;
  /** The middle visit of the three whose running median is lowest. */
  readonly base: VisitValue;
  readonly difference: number;
  readonly smallestDetectable: number;
}

/** Which limit says from when on a visit may be compared with. */
export type BaseFrom = 'spreading.baseFromHours' | 'spreading.earlyBaseFromHours';

/**
 * The newest value against the lowest running median of three usable visits, the visit just before left out.
 *
 * @param view the moment
 * @param valueOf a visit's value, or null
 * @param unit 'mm' or 'mm2': which floor the uncertainty has
 * @param baseFrom the limit that says from when on after the procedure a visit may be the base
 * @returns null where the newest usable visit has gone stale or nothing can be compared
 * A base lies 48 h or more after the procedure and 12 h or more before the newest visit. With fewer than three such
 * visits the highest of them stands for the median: a single low reading can't make a growth of what is none.
 * @example growthOf(view, visitValueOfReach, 'mm')?.difference // 3.1
 */
export function growthOf(view: View, valueOf: (visit: Visit) => VisitValue | null, unit: 'mm' | 'mm2', baseFrom: BaseFrom = 'spreading.baseFromHours'): Growth | null {
  const { limits, visits } = view;
  const values = visits.map(valueOf).filter((value) => value !== null);
  const [newest, before] = [values[values.length - 1], values[values.length - 2]] as (VisitValue | undefined)[];
  if (!newest || !before || view.visits[visits.length - 1].startHours - newest.visit.startHours > limits['fresh.hours']) return null;
  const latest = newest.visit.startHours - limits['spreading.baseOlderHours'];
  const candidates = values
    .slice(0, values.length - 2)
    .filter(({ visit }) => compareReaches(visit.startHours, limits[baseFrom]) && compareReaches(latest, visit.startHours));
  const base = unit === 'mm2' && candidates.length < MEDIAN_OF ? null : lowestRunningMedian(candidates);
  if (base === null) return null;
  const { difference, smallestDetectable } = detectableChange(base, newest, unit);
  return { newest, before, base, difference, smallestDetectable };
}

/** The visit that is the median of its three, of the three with the lowest; the highest of fewer than three. */
function lowestRunningMedian(candidates: readonly VisitValue[]): VisitValue | null {
  if (candidates.length < MEDIAN_OF) return candidates.reduce<VisitValue | null>((top, one) => (top && top.value >= one.value ? top : one), null);
  let lowest: VisitValue | null = null;
  for (let at = 2; at < candidates.length; at++) {
    const middle = middleOf(candidates[at - 2], candidates[at - 1], candidates[at]);
    if (lowest === null || middle.value < lowest.value) lowest = middle;
  }
  return lowest;
}

function middleOf(a: VisitValue, b: VisitValue, c: VisitValue): VisitValue {
  const [low, high] = a.value <= b.value ? [a, b] : [b, a];
  if (c.value <= low.value) return low;
  return c.value >= high.value ? high : c;
}
