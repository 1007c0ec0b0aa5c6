import { compareExceeds } from '../compare';
import type { Raised } from '../finding';
import { newestTwo } from '../newest-two';
import type { Rule, View } from '../view';
import { visitValue, type VisitValue } from '../visit-value';
import type { Visit } from '../visits';
import { seenWords, wordsForNumber } from '../words';

interface Soggy {
  readonly macerated: VisitValue;
  readonly strip: VisitValue;
  readonly percent: number;
}

function soggyShare(visit: Visit): Soggy | null {
  const macerated = visitValue(visit, 'maceratedArea');
  const strip = visitValue(visit, 'foldStripArea');
  return macerated && strip && strip.value > 0 ? { macerated, strip, percent: (100 * macerated.value) / strip.value } : null;
}

/** White, soggy skin on more than a quarter of the strip beside the fold, on two visits. */
function judge({ visits, limits }: View): Raised | null {
  const pair = newestTwo(visits, soggyShare);
  if (pair.length < 2 || !pair.every(({ percent }) => compareExceeds(percent, limits['macerated.percent']))) return null;
  const [before, newest] = pair;
  return {
    level: 'soon',
    knownHours: newest.macerated.visit.knownHours,
    numbers: [seenWords('maceratedArea', newest.macerated, 'mm2'), seenWords('foldStripArea', newest.strip, 'mm2'), { name: 'share', value: newest.percent, unit: '%' }],
    photos: pair.flatMap(({ macerated }) => macerated.photos),
    checkIns: [],
    sentence: `White soggy skin covers ${wordsForNumber(newest.percent)} % of the fold, ${wordsForNumber(before.percent)} % the visit before (limit ${limits['macerated.percent']} %): dressing advice is due.`,
  };
}

export const MACERATED: Rule = { id: 'macerated', kind: 'measurement', ownRiskLevel: false, highest: 'soon', judge };
