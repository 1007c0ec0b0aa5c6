import { hoursBetweenInstants } from '../../care/instant';
import { answeredYes } from '../answered';
import { compareExceeds } from '../compare';
import type { Raised } from '../finding';
import type { Rule, View } from '../view';

const WORDS = {
  dusky: 'a black or grey toe',
  cold: 'a cold toe',
  boneVisible: 'bone or tendon in sight',
  painOutOfProportion: 'pain out of proportion',
} as const;

/** Blood or tissue in danger; numbness counts once the anaesthetic has worn off, and where nerves were sound before. */
function judge({ visits, course, limits }: View): Raised | null {
  const visit = visits.at(-1);
  if (!visit) return null;
  const { procedure, risks } = course.episode;
  const anaestheticHours = hoursBetweenInstants(procedure.at, procedure.anaestheticAt ?? procedure.at);
  const numb = visit.entries.some(({ answers, hours }) => answers.numb === true && compareExceeds(hours - anaestheticHours, limits['numb.hours']));
  const seen = (Object.keys(WORDS) as (keyof typeof WORDS)[]).filter((question) => answeredYes(visit, question)).map((question): string => WORDS[question]);
  if (numb && !risks.includes('neuropathy')) seen.push('numbness after the anaesthetic should have worn off');
  if (seen.length === 0) return null;
  return {
    level: 'now',
    knownHours: Math.max(...visit.entries.map(({ hours }) => hours)),
    numbers: [{ name: 'sinceAnaesthetic', value: visit.startHours - anaestheticHours, unit: 'h' }],
    photos: [],
    checkIns: visit.entries.map(({ at }) => at),
    sentence: `Reported: ${seen.join(', ')}.`,
  };
}

export const DUSKY_TOE: Rule = { id: 'dusky-toe', kind: 'symptom', ownRiskLevel: false, highest: 'now', judge };
