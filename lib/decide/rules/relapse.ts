import { detectableChange } from '../../trend/detectable-change';
import { answeredAt, answeredClean } from '../answered';
import { compareExceeds, compareReaches } from '../compare';
import type { Raised } from '../finding';
import { newestTwoOf } from '../newest-two';
import type { Rule, View } from '../view';
import { visitValue, type VisitValue } from '../visit-value';
import type { Visit } from '../visits';
import { seenWords, wordsForNumber } from '../words';

const saysDry = ({ entries }: Visit): boolean | null => {
  const said = entries.flatMap((entry) => answeredClean(entry) ?? []);
  return said.length === 0 ? null : said.every((clean) => clean);
};

const isWetWithDischarge = ({ entries }: Visit): boolean =>
  entries.some(({ answers }) => answers.wetness === 'wet' && (answers.dischargeColour ?? 'none') !== 'none');

/** Two check-ins not dry, or one wet with discharge. */
function wetAgain(after: readonly Visit[]): readonly Visit[] | null {
  const newest = after.at(-1);
  if (!newest) return null;
  if (isWetWithDischarge(newest)) return [newest];
  const [last, before] = newestTwoOf(after, (visit) => saysDry(visit) !== null).reverse();
  const both = last === newest && before && saysDry(last) === false && saysDry(before) === false;
  return both ? [before, last] : null;
}

const area = (visit: Visit): VisitValue | null => visitValue(visit, 'erythemaArea');

/** Redness area up against the last one seen until it was dry, on two visits in a row. */
function redAgain({ visits, limits }: View, dryHours: number): { base: VisitValue; pair: VisitValue[] } | null {
  const values = visits.flatMap((visit) => area(visit) ?? []);
  const base = values.findLast(({ visit }) => visit.startHours <= dryHours);
  const pair = newestTwoOf(values, ({ visit }) => visit.startHours > dryHours);
  if (!base || pair.length < 2) return null;
  const isUp = (one: VisitValue) => {
    const { difference, smallestDetectable } = detectableChange(base, one, 'mm2');
    const least = Math.max((base.value * limits['relapse.areaPercent']) / 100, limits['relapse.areaMm2'], smallestDetectable);
    return compareReaches(difference, least);
  };
  return pair.every(isUp) ? { base, pair } : null;
}

/** It was dry, and is wet or redder again. */
function judge(view: View): Raised | null {
  const { dryHours, visits } = view;
  if (dryHours === null) return null;
  const wet = wetAgain(visits.filter(({ startHours }) => compareExceeds(startHours, dryHours)));
  const since = Math.max(...visits.map(({ knownHours }) => knownHours));
  if (wet) {
    const said = wet.length > 1 ? 'two check-ins are not dry' : 'one is wet with discharge';
    return {
      level: 'soon',
      knownHours: since,
      endsDryness: true,
      numbers: [{ name: 'checkInsNotDry', value: wet.length, unit: '1' }],
      photos: [],
      checkIns: answeredAt(wet),
      sentence: `It was dry before; now ${said}.`,
    };
  }
  const red = redAgain(view, dryHours);
  if (!red) return null;
  const newest = red.pair[1];
  return {
    level: 'soon',
    knownHours: since,
    numbers: [seenWords('erythemaArea', newest, 'mm2'), seenWords('whenDry', red.base, 'mm2')],
    photos: [red.base, ...red.pair].flatMap(({ photos }) => photos),
    checkIns: [],
    sentence: `It was dry before; the area of redness has grown from ${wordsForNumber(red.base.value)} to ${wordsForNumber(newest.value)} mm², seen on two visits.`,
  };
}

export const RELAPSE: Rule = { id: 'relapse', kind: 'measurement', ownRiskLevel: false, highest: 'soon', judge };
