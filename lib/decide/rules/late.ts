import { HOURS_PER_DAY } from '../../care/instant';
import { compareReaches } from '../compare';
import type { Raised } from '../finding';
import type { Rule, View } from '../view';

/** Not dry by the day on which slow ones are dry, and again by the day on which nearly all are. */
function judge({ hours, limits, course, dryHours }: View): Raised | null {
  const { matricectomy } = course.episode.procedure;
  const [slow, late] = [limits[`slow.${matricectomy}`], limits[`late.${matricectomy}`]];
  if (dryHours !== null || !compareReaches(hours, slow * HOURS_PER_DAY)) return null;
  const isLate = compareReaches(hours, late * HOURS_PER_DAY);
  const day = isLate ? late : slow;
  return {
    level: isLate ? 'soon' : 'visit',
    knownHours: day * HOURS_PER_DAY,
    numbers: [{ name: isLate ? 'late' : 'slow', value: day, unit: 'd' }],
    photos: [],
    checkIns: [],
    sentence: `Not found dry by day ${day}; after this procedure ${isLate ? 'nearly all' : 'most'} are by then.`,
  };
}

export const LATE: Rule = { id: 'late', kind: 'administrative', ownRiskLevel: false, highest: 'soon', judge };
