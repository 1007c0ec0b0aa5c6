import { compareReaches } from '../compare';
import { COVERAGE } from '../constants';
import type { Raised } from '../finding';
import type { Rule, View } from '../view';
import { visitValue, visitValueOfReach, type VisitValue } from '../visit-value';
import { seenWords, wordsForNumber } from '../words';

const wide = ({ value, u }: VisitValue): number => value + COVERAGE * u;

/** Reach with its uncertainty at or beyond 20 mm, or redness across the joint crease: of two readings the wider. */
function judge({ visits, limits }: View): Raised | null {
  const visit = visits.at(-1);
  if (!visit) return null;
  const reach = visitValueOfReach(visit);
  const known = { level: 'today' as const, knownHours: visit.knownHours, checkIns: [] };
  if (reach && compareReaches(wide(reach), limits['reachModerate.mm'])) {
    return {
      ...known,
      numbers: [seenWords('reach', reach, 'mm'), { name: 'limit', value: limits['reachModerate.mm'], unit: 'mm' }],
      photos: reach.photos,
      sentence: `Redness reaches ${wordsForNumber(reach.value)} mm from the nail fold, up to ${wordsForNumber(wide(reach))} mm with its uncertainty; the limit is ${limits['reachModerate.mm']} mm.`,
    };
  }
  const crease = visitValue(visit, 'creaseDistance');
  const proximal = visitValue(visit, 'proximalReach');
  if (!crease || !(compareReaches(0, crease.value) || (proximal && compareReaches(wide(proximal), crease.value)))) return null;
  return {
    ...known,
    numbers: [seenWords('creaseDistance', crease, 'mm'), ...(proximal ? [seenWords('proximalReach', proximal, 'mm')] : [])],
    photos: crease.photos,
    sentence: proximal
      ? `Redness reaches ${wordsForNumber(proximal.value)} mm toward the ankle, up to ${wordsForNumber(wide(proximal))} mm with its uncertainty; the joint crease lies at ${wordsForNumber(crease.value)} mm.`
      : `Redness is seen to cross the joint crease (${wordsForNumber(crease.value)} mm).`,
  };
}

export const REACH_MODERATE: Rule = { id: 'reach-moderate', kind: 'measurement', ownRiskLevel: false, highest: 'today', judge };
