import { compareReaches } from '../compare';
import type { Raised } from '../finding';
import type { Rule, View } from '../view';
import { wordsForHours } from '../words';

/** A finding that it looks dry asks for a look and is no worry that silence makes greater. */
const isWorry = ({ rule }: View['open'][number]): boolean => rule !== 'silent' && rule !== 'dry';

/** Nothing came for the plan's interval and its grace. */
function judge({ hours, course, visits, open, dryConfirmed }: View): Raised | null {
  const { plan } = course.episode;
  const lastHours = visits.at(-1)?.entries.at(-1)?.hours ?? 0;
  const dueHours = lastHours + plan.checkInEveryHours + plan.graceHours;
  if (dryConfirmed || !compareReaches(hours, dueHours)) return null;
  const worried = open.some(isWorry);
  return {
    level: worried ? 'today' : 'soon',
    knownHours: dueHours,
    numbers: [{ name: 'silence', value: plan.checkInEveryHours + plan.graceHours, unit: 'h' }],
    photos: [],
    checkIns: visits.length > 0 ? [course.timeOf(lastHours)] : [],
    sentence: `Nothing came for ${wordsForHours(plan.checkInEveryHours + plan.graceHours)} since the ${visits.length > 0 ? 'last check-in' : 'procedure'}${worried ? ', and a finding is open' : ''}.`,
  };
}

export const SILENT: Rule = { id: 'silent', kind: 'administrative', ownRiskLevel: false, highest: 'today', judge };
