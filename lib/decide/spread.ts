import { answeredAt } from './answered';
import { compareExceeds, compareReaches } from './compare';
import type { Raised } from './finding';
import { type Growth, growthFromPoorBase, growthOfArea, growthOfLength } from './growth';
import { type Sign, SIGN_WORDS, signsSince } from './signs';
import type { View } from './view';
import type { VisitValue } from './visit-value';
import type { Visit } from './visits';
import { seenWords, wordsForHours, wordsForNumber } from './words';

type ValueOf = (visit: Visit) => VisitValue | null;

const ASEPTIC_REDNESS: readonly string[] = ['phenol30', 'phenol60', 'unknown', 'naoh'];

/** A growth, and how many millimetres of it are asked for. */
interface Asked {
  readonly growth: Growth;
  readonly leastMm: number;
  /** Said after the sentence, where more is asked for than usual. */
  readonly why: string;
}

/**
 * Has a length grown: by 2 mm and its smallest detectable change over what it was (`growthOfLength`), and either the
 * visit before already stood 1 mm above it or one more sign is present? Where no visit from 48 h on can be compared
 * with, one from 24 h on will do, else the visit before without any further sign; and 4 mm are asked for.
 *
 * @param view the moment
 * @param valueOf reach or proximal reach of a visit
 * @param name of the length in the evidence and the sentence
 * @example spreadOfLength(view, visitValueOfReach, 'reach')?.level // 'today'
 */
export function spreadOfLength(view: View, valueOf: ValueOf, name: string): Raised | null {
  const asked = growthFromUsualBase(view, valueOf) ?? growthOverMore(view, valueOf);
  if (!asked || !isSeen(asked.growth) || !compareReaches(asked.growth.difference, asked.leastMm)) return null;
  const { growth, leastMm, why } = asked;
  const signs = signsSince(view, growth.newest.visit.startHours);
  const stoodBefore = growth.baseName === 'visitBefore' || compareReaches(growth.before.value - growth.base.value, view.limits['spreading.beforeMm']);
  const least = Math.max(leastMm, growth.smallestDetectable);
  return confirmed(view, growth, signs, stoodBefore || standsTwice(growth, least)) ? raised(view, growth, { signs, name, unit: 'mm', why }) : null;
}

function growthFromUsualBase(view: View, valueOf: ValueOf): Asked | null {
  const growth = growthOfLength(view, valueOf);
  return growth && { growth, leastMm: view.limits['spreading.mm'], why: '' };
}

/**
 * Only where there is nothing else. Toes are red in the first days whatever comes, so that a growth over them says more
 * and not less; but redness after phenol rises by up to 3 mm by itself. And where one visit is all there is to compare
 * with, no second one can confirm: to wait for it costs a day.
 */
function growthOverMore(view: View, valueOf: ValueOf): Asked | null {
  const growth = growthFromPoorBase(view, valueOf);
  if (!growth) return null;
  const leastMm = view.limits['spreading.earlyBaseMm'];
  const from = wordsForHours(growth.base.visit.startHours);
  const reason = growth.baseName === 'visitBefore' ? 'for no other can be its base' : 'for no later one can be its base';
  return { growth, leastMm, why: ` It is compared with a photo taken ${from} after the procedure, ${reason}; so ${wordsForNumber(leastMm)} mm are asked for.` };
}

/**
 * The same for the area of redness: by 25 %, 5 mm² (12 where two visits are all there is to compare with) and its smallest
 * detectable change, 12 % at the visit before, and reach up by 1 mm.
 *
 * @param view the moment
 * @param areaOf area of a visit
 * @param reachOf reach of a visit
 * @example spreadOfArea(view, areaOf, visitValueOfReach)?.level // 'today'
 */
export function spreadOfArea(view: View, areaOf: ValueOf, reachOf: ValueOf): Raised | null {
  const { limits } = view;
  const growth = growthOfArea(view, areaOf);
  if (!growth || !isSeen(growth) || !risesBy(growth, growth.newest, limits['spreading.areaPercent'])) return null;
  const leastMm2 = limits[growth.baseName === 'higherOfTwo' ? 'spreading.fewAreaMm2' : 'spreading.areaMm2'];
  if (!compareReaches(growth.difference, leastMm2)) return null;
  const reach = growthOfLength(view, reachOf);
  if (!reach || !compareReaches(reach.difference, limits['spreading.areaReachMm'])) return null;
  const signs = signsSince(view, growth.newest.visit.startHours);
  const stoodBefore = risesBy(growth, growth.before, limits['spreading.areaBeforePercent']);
  return confirmed(view, growth, signs, stoodBefore) ? raised(view, growth, { signs, name: 'the area of redness', unit: 'mm2', why: '' }) : null;
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

interface Said {
  readonly signs: readonly Sign[];
  readonly name: string;
  readonly unit: 'mm' | 'mm2';
  readonly why: string;
}

function raised({ visits }: View, growth: Growth, { signs, name, unit, why }: Said): Raised {
  const { newest, base, baseName, difference, smallestDetectable } = growth;
  const before = baseName === 'visitBefore' ? [] : [growth.before];
  const since = visits.filter(({ startHours }) => startHours >= newest.visit.startHours);
  const hours = newest.visit.startHours - base.visit.startHours;
  const shown = unit === 'mm' ? 'mm' : 'mm²';
  const beside = signs.length > 0 ? `, and there is ${signs.map((sign) => SIGN_WORDS[sign]).join(', ')}` : '';
  return {
    level: 'today',
    knownHours: Math.max(...since.map(({ knownHours }) => knownHours)),
    numbers: [
      seenWords('newest', newest, unit),
      ...before.map((one) => seenWords('before', one, unit)),
      seenWords(baseName, base, unit),
      { name: 'growth', value: difference, unit },
      { name: 'smallestDetectableChange', value: smallestDetectable, unit },
      { name: 'elapsed', value: hours, unit: 'h' },
    ],
    photos: [...base.photos, ...before.flatMap(({ photos }) => photos), ...newest.photos],
    checkIns: signs.length > 0 ? answeredAt(since) : [],
    sentence: `${name[0].toUpperCase()}${name.slice(1)} grew ${wordsForNumber(difference)} ${shown} in ${wordsForHours(hours)}, smallest change we can see is ${wordsForNumber(smallestDetectable)} ${shown}${beside}.${why}`,
  };
}
