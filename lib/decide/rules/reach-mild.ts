import { answeredAt } from '../answered';
import { compareExceeds } from '../compare';
import { COVERAGE } from '../constants';
import type { Raised } from '../finding';
import { newestReach } from '../newest-reach';
import { SIGN_WORDS, signsSince } from '../signs';
import type { Rule, View } from '../view';
import { seenWords, wordsForNumber } from '../words';

/** After day 3, reach less its uncertainty beyond 5 mm, and one more sign. */
function judge(view: View): Raised | null {
  const { limits, course, visits } = view;
  const reach = newestReach(view);
  if (!reach || !compareExceeds(reach.visit.startHours, limits['early.hours'])) return null;
  const sure = reach.value - COVERAGE * reach.u;
  if (!compareExceeds(sure, limits['reachMild.mm'])) return null;
  const signs = signsSince(view, reach.visit.startHours);
  if (signs.length === 0) return null;
  const since = visits.filter(({ startHours }) => startHours >= reach.visit.startHours);
  return {
    level: course.atRisk ? 'today' : 'soon',
    knownHours: Math.max(...since.map(({ knownHours }) => knownHours)),
    numbers: [seenWords('reach', reach, 'mm'), { name: 'limit', value: limits['reachMild.mm'], unit: 'mm' }],
    photos: reach.photos,
    checkIns: answeredAt(since),
    sentence: `Redness reaches ${wordsForNumber(reach.value)} mm, at least ${wordsForNumber(sure)} mm with its uncertainty (limit ${limits['reachMild.mm']} mm), together with ${signs.map((sign) => SIGN_WORDS[sign]).join(', ')}.`,
  };
}

export const REACH_MILD: Rule = { id: 'reach-mild', kind: 'measurement', ownRiskLevel: true, highest: 'today', judge };
