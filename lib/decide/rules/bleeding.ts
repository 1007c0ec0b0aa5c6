import { answeredAt, answeredYes } from '../answered';
import type { Raised } from '../finding';
import type { Rule, View } from '../view';

/** Blood that runs, whatever was pressed; or that keeps coming after twenty minutes of pressure with the foot raised. */
function judge({ visits, course }: View): Raised | null {
  const visit = visits.at(-1);
  if (!visit) return null;
  const evidence = { knownHours: visit.knownHours, photos: [], checkIns: answeredAt([visit]) };
  if (answeredYes(visit, 'bloodRuns')) return { ...evidence, level: 'now', numbers: [], sentence: 'Reported: blood runs or drips, or the person feels faint.' };
  if (!answeredYes(visit, 'bleedingAfterPressure')) return null;
  const thinned = course.episode.risks.includes('anticoagulant');
  return {
    ...evidence,
    level: thinned ? 'now' : 'today',
    numbers: [{ name: 'pressure', value: MINUTES_OF_PRESSURE, unit: 'min' }],
    sentence: `Blood keeps coming after ${MINUTES_OF_PRESSURE} minutes of pressure with the foot raised${thinned ? ', and the person takes an anticoagulant' : ''}.`,
  };
}

/** Part of the question as it is asked. */
const MINUTES_OF_PRESSURE = 20;

export const BLEEDING: Rule = { id: 'bleeding', kind: 'symptom', ownRiskLevel: true, highest: 'now', judge };
