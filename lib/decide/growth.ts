import { detectableChange } from '../trend/detectable-change';
import { type Base, baseOfLength, carefulBase } from './base';
import { compareReaches } from './compare';
import type { View } from './view';
import type { VisitValue } from './visit-value';
import type { Visit } from './visits';

export interface Growth {
  readonly newest: VisitValue;
  /** The visit before the newest; where there is no other, the base itself. */
  readonly before: VisitValue;
  readonly base: VisitValue;
  /** What the base is, for the evidence. */
  readonly baseName: Base['name'] | 'earlyBase' | 'visitBefore';
  readonly difference: number;
  readonly smallestDetectable: number;
}

type ValueOf = (visit: Visit) => VisitValue | null;

/** The newest two values, where the newest still speaks for today. */
interface Newest {
  readonly newest: VisitValue;
  readonly before: VisitValue;
  /** All before these two, oldest first. */
  readonly earlier: readonly VisitValue[];
}

function newestOf({ visits, limits }: View, valueOf: ValueOf): Newest | null {
  const values = visits.map(valueOf).filter((value) => value !== null);
  const [newest, before] = [values[values.length - 1], values[values.length - 2]] as (VisitValue | undefined)[];
  if (!newest || !before || visits[visits.length - 1].startHours - newest.visit.startHours > limits['fresh.hours']) return null;
  return { newest, before, earlier: values.slice(0, values.length - 2) };
}

/** Visits that lie long enough after the procedure and long enough before the newest one. */
function comparable({ limits }: View, { newest }: Newest, visits: readonly VisitValue[], fromHours: number): VisitValue[] {
  const latest = newest.visit.startHours - limits['spreading.baseOlderHours'];
  return visits.filter(({ visit }) => compareReaches(visit.startHours, fromHours) && compareReaches(latest, visit.startHours));
}

function grownOver({ newest, before }: Newest, base: VisitValue, baseName: Growth['baseName'], unit: 'mm' | 'mm2'): Growth {
  const { difference, smallestDetectable } = detectableChange(base, newest, unit);
  return { newest, before, base, baseName, difference, smallestDetectable };
}

/**
 * The newest length against the visits from 48 h on that are 12 h older, the visit just before left out (`baseOfLength`).
 *
 * @param view the moment
 * @param lengthOf a visit's length, or null
 * @returns null where the newest usable visit has gone stale or nothing can be compared
 * @example growthOfLength(view, likeReach(view.visits))?.difference // 3.1
 */
export function growthOfLength(view: View, lengthOf: ValueOf): Growth | null {
  const newest = newestOf(view, lengthOf);
  const base = newest && baseOfLength(comparable(view, newest, newest.earlier, view.limits['spreading.baseFromHours']));
  return newest && base && grownOver(newest, base.value, base.name, 'mm');
}

/**
 * The same for an area, which needs two such visits at least: the higher of two.
 *
 * @example growthOfArea(view, (visit) => visitValue(visit, 'erythemaArea'))?.difference // 12
 */
export function growthOfArea(view: View, areaOf: ValueOf): Growth | null {
  const newest = newestOf(view, areaOf);
  const base = newest && carefulBase(comparable(view, newest, newest.earlier, view.limits['spreading.baseFromHours']));
  return newest && base && base.name !== 'onlyVisit' ? grownOver(newest, base.value, base.name, 'mm2') : null;
}

/**
 * A length where no visit from 48 h on can be compared with: against those from 24 h on, the higher of two; where there is
 * none either, against the visit just before, if that is from 24 h on and 12 h older.
 *
 * @returns null where the newest usable visit has gone stale or nothing can be compared
 * @example growthFromPoorBase(view, likeReach(view.visits))?.baseName // 'earlyBase'
 */
export function growthFromPoorBase(view: View, lengthOf: ValueOf): Growth | null {
  const newest = newestOf(view, lengthOf);
  if (!newest) return null;
  const fromHours = view.limits['spreading.earlyBaseFromHours'];
  const early = carefulBase(comparable(view, newest, newest.earlier, fromHours));
  if (early) return grownOver(newest, early.value, 'earlyBase', 'mm');
  const [only] = comparable(view, newest, [newest.before], fromHours) as readonly (VisitValue | undefined)[];
  return only ? grownOver(newest, only, 'visitBefore', 'mm') : null;
}
