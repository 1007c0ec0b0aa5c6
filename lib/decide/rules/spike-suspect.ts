import { HOURS_PER_DAY } from '../../care/instant';
import { answeredAt, answeredPain, answeredYes } from '../answered';
import { compareExceeds, compareReaches } from '../compare';
import { COVERAGE } from '../constants';
import type { Raised } from '../finding';
import { newestTwoOf } from '../newest-two';
import type { Rule, View } from '../view';
import { visitValue } from '../visit-value';
import type { Visit } from '../visits';

const isRedAtCorner = (visit: Visit): boolean => {
  const proximal = visitValue(visit, 'proximalReach');
  return proximal !== null && compareExceeds(proximal.value - COVERAGE * proximal.u, 0);
};

const asksCorner = ({ entries }: Visit): boolean => entries.some(({ answers }) => answers.cornerTender !== undefined);

/** A spike or torn edge on record; or, after day 10, a tender and red proximal corner on two visits. */
function judge({ visits, limits, course }: View): Raised | null {
  const { edge } = course.episode.procedure;
  const onRecord = edge === 'spike' || edge === 'torn';
  const newest = visits.at(-1);
  const pair = newestTwoOf(visits, (visit) => asksCorner(visit) && visit.usablePhotos.length > 0);
  const tender =
    pair.length > 1 &&
    pair.every((visit) => compareExceeds(visit.startHours, limits['spike.afterDays'] * HOURS_PER_DAY) && answeredYes(visit, 'cornerTender') && isRedAtCorner(visit));
  if (!onRecord && !tender) return null;
  const pain = newest && compareExceeds(newest.startHours, limits['early.hours']) ? answeredPain(newest) : null;
  const painful = pain !== null && compareReaches(pain, limits['pain.strong']);
  return {
    level: painful ? 'soon' : 'visit',
    knownHours: painful || tender ? (newest?.knownHours ?? 0) : 0,
    numbers: pain === null ? [] : [{ name: 'pain', value: pain, unit: '/10' }],
    photos: tender ? pair.flatMap((visit) => visitValue(visit, 'proximalReach')?.photos ?? []) : [],
    checkIns: tender ? answeredAt(pair) : painful && newest ? answeredAt([newest]) : [],
    sentence: `${tender ? 'The proximal corner is tender and red on two visits' : 'A spike or torn edge was recorded at the procedure'}${painful ? `, with pain ${pain} of 10` : ''}.`,
  };
}

export const SPIKE_SUSPECT: Rule = { id: 'spike-suspect', kind: 'measurement', ownRiskLevel: false, highest: 'soon', judge };
