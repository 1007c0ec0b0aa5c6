import { answeredAt, answeredYes } from '../answered';
import type { Raised } from '../finding';
import type { Rule, View } from '../view';

/** Blood keeps coming after twenty minutes of pressure with the foot raised. */
function judge({ visits, course }: View): Raised | null {
  const visit = visits.at(-1);
  if (!visit || !answeredYes(visit, 'bleedingAfterPressure')) return null;
  const thinned = course.episode.risks.includes('anticoagulant');
  return {
    level: thinned ? 'now' : 'today',
    knownHours: visit.knownHours,
    numbers: [{ name: 'pressure', value: MINUTES_OF_PRESSURE, unit: 'min' }],
    photos: [],
    checkIns: answeredAt([visit]),
    sentence: `Blood keeps coming after ${MINUTES_OF_PRESSURE} minutes of pressure with the foot raised${thinned ? ', and the person takes an anticoagulant' : ''}.`,
  };
}

/** Part of the question as it is asked. */
const MINUTES_OF_PRESSURE = 20;

export const BLEEDING: Rule = { id: 'bleeding', kind: 'symptom', ownRiskLevel: true, highest: 'now', judge };
