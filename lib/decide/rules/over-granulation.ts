import { answeredAt, answeredYes } from '../answered';
import { compareReaches } from '../compare';
import type { Raised } from '../finding';
import { newestTwoOf } from '../newest-two';
import type { Rule, View } from '../view';
import { visitValue } from '../visit-value';
import type { Visit } from '../visits';
import { seenWords } from '../words';

const speaksOfIt = (visit: Visit): boolean =>
  visit.entries.some(({ answers }) => answers.proudTissue !== undefined) || visitValue(visit, 'rawBeyondMargin') !== null;

/** Proud red moist tissue over the fold's edge, reported or measured, on two visits. */
function judge({ visits, limits }: View): Raised | null {
  const isProud = (visit: Visit) => {
    const beyond = visitValue(visit, 'rawBeyondMargin');
    return answeredYes(visit, 'proudTissue') || (beyond !== null && compareReaches(beyond.value, limits['overGranulation.mm']));
  };
  const pair = newestTwoOf(visits, speaksOfIt);
  if (pair.length < 2 || !pair.every(isProud)) return null;
  const beyond = pair.flatMap((visit) => visitValue(visit, 'rawBeyondMargin') ?? []);
  return {
    level: 'visit',
    knownHours: pair[1].knownHours,
    numbers: beyond.map((one) => seenWords('rawBeyondMargin', one, 'mm')),
    photos: beyond.flatMap(({ photos }) => photos),
    checkIns: answeredAt(pair.filter((visit) => answeredYes(visit, 'proudTissue'))),
    sentence: `Raw tissue stands over the fold’s edge on two visits (measured limit ${limits['overGranulation.mm']} mm).`,
  };
}

export const OVER_GRANULATION: Rule = { id: 'over-granulation', kind: 'measurement', ownRiskLevel: false, highest: 'visit', judge };
