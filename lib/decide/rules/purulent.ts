import { answeredPurulent } from '../answered';
import { compareExceeds } from '../compare';
import type { Raised } from '../finding';
import { newestReach } from '../newest-reach';
import type { Rule, View } from '../view';
import { seenWords, wordsForNumber } from '../words';

/** Green or yellow, and thick: the wording of NHSN. Heavier with reach beyond 5 mm or in a foot at risk. */
function judge(view: View): Raised | null {
  const { visits, course, limits } = view;
  const visit = visits.at(-1);
  const entries = visit?.entries.filter(answeredPurulent) ?? [];
  const [entry] = entries;
  if (!visit || !entry) return null;
  const reach = newestReach(view);
  const wide = reach !== null && compareExceeds(reach.value, limits['purulent.reachMm']) ? reach : null;
  const { dischargeColour, dischargeConsistency } = entry.answers;
  return {
    level: wide || course.atRisk ? 'today' : 'soon',
    knownHours: visit.knownHours,
    numbers: wide ? [seenWords('reach', wide, 'mm')] : [],
    photos: wide?.photos ?? [],
    checkIns: entries.map(({ at }) => at),
    sentence: `Discharge is ${dischargeColour} and ${dischargeConsistency}${wide ? `, and redness reaches ${wordsForNumber(wide.value)} mm` : ''}.`,
  };
}

export const PURULENT: Rule = { id: 'purulent', kind: 'symptom', ownRiskLevel: true, highest: 'today', judge };
