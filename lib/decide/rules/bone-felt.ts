import { HOURS_PER_DAY } from '../../care/instant';
import { answeredAt, answeredPain } from '../answered';
import { compareExceeds, compareReaches } from '../compare';
import type { Raised, SeenNumber } from '../finding';
import { newestTwoOf } from '../newest-two';
import type { Rule, View } from '../view';
import { visitValue } from '../visit-value';
import type { Visit } from '../visits';
import { seenWords } from '../words';

/** Redness as this visit shows it: its area, or its reach where the lens leaned too far over for an area. */
function seenRedness(visit: Visit): { readonly photos: readonly string[]; readonly number: SeenNumber } | null {
  const [area, reach] = [visitValue(visit, 'erythemaArea'), visitValue(visit, 'reach')];
  if (area) return { photos: area.photos, number: seenWords('erythemaArea', area, 'mm2') };
  return reach && { photos: reach.photos, number: seenWords('reach', reach, 'mm') };
}

/** Bone was felt; or redness stays and pain goes on after two weeks. For the clinician to think of the bone. */
function judge({ visits, limits, course }: View): Raised | null {
  if (course.episode.procedure.boneFelt) {
    return { level: 'today', knownHours: 0, numbers: [], photos: [], checkIns: [], sentence: 'Bone was felt at the procedure: for the clinician.' };
  }
  const pair = newestTwoOf(visits, (visit) => visit.usablePhotos.length > 0 && answeredPain(visit) !== null);
  const red = pair.flatMap((visit) => seenRedness(visit) ?? []);
  const goesOn = pair.every((visit) => compareExceeds(visit.startHours, limits['boneFelt.afterDays'] * HOURS_PER_DAY) && compareReaches(answeredPain(visit) ?? 0, limits['pain.strong']));
  if (pair.length < 2 || red.length < 2 || !goesOn) return null;
  const [before, newest] = pair.map((visit) => answeredPain(visit) ?? 0);
  return {
    level: 'today',
    knownHours: pair[1].knownHours,
    numbers: [red[1].number, { name: 'pain', value: newest, unit: '/10' }],
    photos: red.flatMap(({ photos }) => photos),
    checkIns: answeredAt(pair),
    sentence: `After day ${limits['boneFelt.afterDays']} the fold is red and pain goes on (${before} and ${newest} of 10): for the clinician.`,
  };
}

export const BONE_FELT: Rule = { id: 'bone-felt', kind: 'measurement', ownRiskLevel: false, highest: 'today', judge };
