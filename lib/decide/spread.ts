import { answeredAt } from './answered';
import { compareExceeds, compareReaches } from './compare';
import type { Raised } from './finding';
import { type Growth, growthOf } from './growth';
import { type Sign, SIGN_WORDS, signsSince } from './signs';
import type { View } from './view';
import type { VisitValue } from './visit-value';
import type { Visit } from './visits';
import { seenWords, wordsForHours, wordsForNumber } from './words';

type ValueOf = (visit: Visit) => VisitValue | null;

const ASEPTIC_REDNESS: readonly string[] = ['phenol30', 'phenol60', 'unknown', 'naoh'];

/**
 * Has a length grown: by 2 mm and its smallest detectable change over its own lowest running median, and either the
 * visit before already stood 1 mm above it or one more sign is present?
 *
 * @param view the moment
 * @param valueOf reach or proximal reach of a visit
 * @param name of the length in the evidence and the sentence
 * @example spreadOfLength(view, visitValueOfReach, 'reach')?.level // 'today'
 */
export function spreadOfLength(view: View, valueOf: ValueOf, name: string): Raised | null {
  const { limits } = view;
  const growth = growthOf(view, valueOf, 'mm');
  if (!growth || !isSeen(growth) || !compareReaches(growth.difference, limits['spreading.mm'])) return null;
  const signs = signsSince(view, growth.newest.visit.startHours);
  const stoodBefore = compareReaches(growth.before.value - growth.base.value, limits['spreading.beforeMm']);
  const least = Math.max(limits['spreading.mm'], growth.smallestDetectable);
  return confirmed(view, growth, signs, stoodBefore || standsTwice(growth, least)) ? raised(view, growth, signs, name, 'mm') : null;
}

/**
 * The same for the area of redness: by 25 % and its smallest detectable change, 12 % at the visit before, and reach up by 1 mm.
 *
 * @param view the moment
 * @param areaOf area of a visit
 * @param reachOf reach of a visit
 * @example spreadOfArea(view, areaOf, visitValueOfReach)?.level // 'today'
 */
export function spreadOfArea(view: View, areaOf: ValueOf, reachOf: ValueOf): Raised | null {
  const { limits } = view;
  const growth = growthOf(view, areaOf, 'mm2');
  if (!growth || !isSeen(growth) || !risesBy(growth, growth.newest, limits['spreading.areaPercent'])) return null;
  const reach = growthOf(view, reachOf, 'mm');
  if (!reach || !compareReaches(reach.difference, limits['spreading.areaReachMm'])) return null;
  const signs = signsSince(view, growth.newest.visit.startHours);
  const stoodBefore = risesBy(growth, growth.before, limits['spreading.areaBeforePercent']);
  return confirmed(view, growth, signs, stoodBefore) ? raised(view, growth, signs, 'the area of redness', 'mm2') : null;
}

/** Every one of several photos of the newest visit shows the growth: no single wild photo made it. */
const standsTwice = ({ newest, base }: Growth, least: number): boolean =>
  newest.lowestOfSeveral !== null && compareReaches(newest.lowestOfSeveral - base.value, least);

const isSeen = ({ difference, smallestDetectable }: Growth): boolean => compareReaches(difference, smallestDetectable);

const risesBy = ({ base }: Growth, { value }: VisitValue, percent: number): boolean =>
  base.value > 0 && compareReaches(value, base.value * (1 + percent / 100));

/** Day 3 is over, day 5 where the matrix was treated and nothing else is wrong; and it is no single wild photo. */
function confirmed({ limits, course }: View, { newest }: Growth, signs: readonly Sign[], stoodBefore: boolean): boolean {
  const chemical = ASEPTIC_REDNESS.includes(course.episode.procedure.matricectomy);
  const from = limits[chemical && signs.length === 0 ? 'early.chemicalHours' : 'early.hours'];
  return compareExceeds(newest.visit.startHours, from) && (stoodBefore || signs.length > 0);
}

function raised({ visits }: View, growth: Growth, signs: readonly Sign[], name: string, unit: 'mm' | 'mm2'): Raised {
  const { newest, before, base, difference, smallestDetectable } = growth;
  const since = visits.filter(({ startHours }) => startHours >= newest.visit.startHours);
  const hours = newest.visit.startHours - base.visit.startHours;
  const shown = unit === 'mm' ? 'mm' : 'mm²';
  const beside = signs.length > 0 ? `, and there is ${signs.map((sign) => SIGN_WORDS[sign]).join(', ')}` : '';
  return {
    level: 'today',
    knownHours: Math.max(...since.map(({ knownHours }) => knownHours)),
    numbers: [
      seenWords('newest', newest, unit),
      seenWords('before', before, unit),
      seenWords('lowestRunningMedian', base, unit),
      { name: 'growth', value: difference, unit },
      { name: 'smallestDetectableChange', value: smallestDetectable, unit },
      { name: 'elapsed', value: hours, unit: 'h' },
    ],
    photos: [...base.photos, ...before.photos, ...newest.photos],
    checkIns: signs.length > 0 ? answeredAt(since) : [],
    sentence: `${name[0].toUpperCase()}${name.slice(1)} grew ${wordsForNumber(difference)} ${shown} in ${wordsForHours(hours)}, smallest change we can see is ${wordsForNumber(smallestDetectable)} ${shown}${beside}.`,
  };
}
