import { HOURS_PER_DAY } from '../../care/instant';
import { answeredAt, answeredPain } from '../answered';
import { compareExceeds, compareReaches } from '../compare';
import type { Raised } from '../finding';
import { newestTwoOf } from '../newest-two';
import type { Rule, View } from '../view';
import { visitValue } from '../visit-value';
import { seenWords } from '../words';

/** Bone was felt; or redness stays and pain goes on after two weeks. For the clinician to think of the bone. */
function judge({ visits, limits, course }: View): Raised | null {
  if (course.episode.procedure.boneFelt) {
    return { level: 'today', knownHours: 0, numbers: [], photos: [], checkIns: [], sentence: 'Bone was felt at the procedure: for the clinician.' };
  }
  const pair = newestTwoOf(visits, (visit) => visit.usablePhotos.length > 0 && answeredPain(visit) !== null);
  const areas = pair.flatMap((visit) => visitValue(visit, 'erythemaArea') ?? []);
  const goesOn = pair.every((visit) => compareExceeds(visit.startHours, limits['boneFelt.afterDays'] * HOURS_PER_DAY) && compareReaches(answeredPain(visit) ?? 0, limits['pain.strong']));
  if (pair.length < 2 || areas.length < 2 || !goesOn) return null;
  const [before, newest] = pair.map((visit) => answeredPain(visit) ?? 0);
  return {
    level: 'today',
    knownHours: pair[1].knownHours,
    numbers: [seenWords('erythemaArea', areas[1], 'mm2'), { name: 'pain', value: newest, unit: '/10' }],
    photos: areas.flatMap(({ photos }) => photos),
    checkIns: answeredAt(pair),
    sentence: `After day ${limits['boneFelt.afterDays']} the fold is red and pain goes on (${before} and ${newest} of 10): for the clinician.`,
  };
}

export const BONE_FELT: Rule = { id: 'bone-felt', kind: 'measurement', ownRiskLevel: false, highest: 'today', judge };
