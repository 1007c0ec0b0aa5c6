import { answeredPain } from './answered';
import { compareExceeds, compareReaches } from './compare';
import type { LimitId } from './constants';
import type { Visit } from './visits';

export interface PainRise {
  readonly pain: number;
  readonly base: number;
  /** The visits it rests on, the newest last. */
  readonly visits: readonly Visit[];
}

/**
 * Has pain risen by the newest visit, against the second-lowest report since the anaesthetic wore off?
 *
 * @param visits up to the one in question, oldest first
 * @param limits of the rule book
 * @returns null where the newest visit has no report, is too early, or pain has not risen
 * @example painRise(visits, limits)?.base // 1
 */
export function painRise(visits: readonly Visit[], limits: Readonly<Record<LimitId, number>>): PainRise | null {
  const newest = visits.at(-1);
  const pain = newest ? answeredPain(newest) : null;
  if (!newest || pain === null || pain < limits['pain.riseTwice'] || !isLate(newest, limits)) return null;
  const reports = visits.flatMap((visit) => {
    const pain = answeredPain(visit);
    return pain === null || !compareExceeds(visit.startHours, limits['pain.fromHours']) ? [] : [{ pain, visit }];
  });
  const [last, previous] = [reports[reports.length - 1], reports[reports.length - 2]] as ((typeof reports)[number] | undefined)[];
  const base = secondLowest(reports.map(({ pain }) => pain));
  if (!last || base === null) return null;
  if (compareReaches(last.pain - base, limits['pain.riseOnce'])) return { pain: last.pain, base, visits: [last.visit] };
  if (!previous || !isLate(previous.visit, limits)) return null;
  const both = compareReaches(Math.min(last.pain, previous.pain) - base, limits['pain.riseTwice']);
  return both ? { pain: last.pain, base, visits: [previous.visit, last.visit] } : null;
}

const isLate = (visit: Visit, limits: Readonly<Record<LimitId, number>>): boolean => compareExceeds(visit.startHours, limits['early.hours']);

/** The lowest of all may be a slip of the finger. */
const secondLowest = (values: readonly number[]): number | null => (values.length < 2 ? null : [...values].sort((a, b) => a - b)[1]);
