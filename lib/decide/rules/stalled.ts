import { mannKendall } from '../../trend/mann-kendall';
import { compareExceeds, compareReaches } from '../compare';
import { HOURS_PER_DAY } from '../../care/instant';
import type { Raised } from '../finding';
import type { Rule, View } from '../view';
import { visitValue, type VisitValue } from '../visit-value';
import { seenWords, wordsForHours, wordsForNumber } from '../words';

/** The newest visits that are enough in number and span, or null. */
function stretchOf(values: readonly VisitValue[], least: number, spanHours: number): VisitValue[] | null {
  const newest = values.at(-1);
  const long = newest ? values.findLastIndex(({ visit }) => compareReaches(newest.visit.startHours - visit.startHours, spanHours)) : -1;
  const from = Math.min(long, values.length - least);
  return long < 0 || from < 0 ? null : values.slice(from);
}

const meanOf = (values: readonly VisitValue[]): number => values.reduce((sum, { value }) => sum + value, 0) / values.length;

/** The raw area no longer shrinks although half of the expected time has passed. */
function judge({ visits, limits, course }: View): Raised | null {
  const values = visits.flatMap((visit) => visitValue(visit, 'rawArea') ?? []);
  const newest = values.at(-1);
  const fromHours = (limits[`expected.${course.episode.procedure.matricectomy}`] / 2 + limits['stalled.extraDays']) * HOURS_PER_DAY;
  if (!newest || !compareReaches(newest.visit.startHours, fromHours)) return null;
  const peak = values.reduce((top, one) => (one.value > top.value ? one : top));
  if (!compareExceeds(newest.value, (peak.value * limits['stalled.peakPercent']) / 100)) return null;
  const stretch = stretchOf(values, limits['stalled.photos'], limits['stalled.spanHours']);
  if (!stretch) return null;
  const [first, last] = [meanOf(stretch.slice(0, 2)), meanOf(stretch.slice(stretch.length - 2))];
  if (compareReaches(first * (1 - limits['stalled.dropPercent'] / 100), last)) return null;
  const { s, fallingTail } = mannKendall(stretch.map(({ value }) => value));
  const hours = newest.visit.startHours - stretch[0].visit.startHours;
  return {
    level: 'soon',
    knownHours: newest.visit.knownHours,
    numbers: [
      seenWords('rawArea', newest, 'mm2'),
      seenWords('peak', peak, 'mm2'),
      { name: 'meanOfFirstTwo', value: first, unit: 'mm2' },
      { name: 'meanOfLastTwo', value: last, unit: 'mm2' },
      { name: 'mannKendallS', value: s, unit: '1' },
      { name: 'exactFallingTail', value: fallingTail, unit: '1' },
    ],
    photos: stretch.flatMap(({ photos }) => photos),
    checkIns: [],
    sentence: `Raw area went from ${wordsForNumber(first)} to ${wordsForNumber(last)} mm² in ${wordsForHours(hours)} and is ${wordsForNumber((100 * newest.value) / peak.value)} % of its peak; by half of the expected time we look for 50 % (an inference from ulcer literature).`,
  };
}

export const STALLED: Rule = { id: 'stalled', kind: 'measurement', ownRiskLevel: false, highest: 'soon', judge };
