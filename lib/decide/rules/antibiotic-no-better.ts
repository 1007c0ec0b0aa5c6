import { type Change, detectableChange } from '../../trend/detectable-change';
import { compareReaches } from '../compare';
import type { Raised } from '../finding';
import { likeReach } from '../like-reach';
import type { Rule, View } from '../view';
import { visitValue, type VisitValue } from '../visit-value';
import type { Visit } from '../visits';
import { seenWords, wordsForHours, wordsForNumber } from '../words';

type ValueOf = (visit: Visit) => VisitValue | null;

/** What must be down, each with its unit; reach is the one that all visits have. */
const watched = (reach: ValueOf) =>
  [
    ['reach', 'mm', reach],
    ['erythemaArea', 'mm2', (visit: Visit) => visitValue(visit, 'erythemaArea')],
    ['rednessLoad', '{EI}.mm2', (visit: Visit) => visitValue(visit, 'rednessLoad')],
  ] as const;

/** In a sentence: name, and unit where it has one that people use. */
const SAID = { reach: ['reach', ' mm'], erythemaArea: ['area of redness', ' mm²'], rednessLoad: ['redness load', ''] } as const;

interface Compared {
  readonly name: keyof typeof SAID;
  readonly unit: string;
  readonly before: VisitValue;
  readonly after: VisitValue;
  readonly change: Change;
}

function compareVisits(before: Visit, after: Visit, reach: ValueOf): Compared[] {
  return watched(reach).flatMap(([name, unit, valueOf]) => {
    const [a, b] = [valueOf(before), valueOf(after)];
    return a && b ? [{ name, unit, before: a, after: b, change: detectableChange(a, b, unit) }] : [];
  });
}

const isDown = ({ change }: Compared): boolean => compareReaches(-change.difference, change.smallestDetectable);

/** Two to three days into an antibiotic, neither reach, area nor load is down by what we can see. */
function judge({ visits, limits, course }: View): Raised | null {
  const started = course.antibioticHours;
  if (started === null) return null;
  const reachOf = likeReach(visits);
  const around = visits
    .filter(({ startHours }) => compareReaches(startHours, started - limits['antibiotic.beforeHours']) && compareReaches(started + limits['antibiotic.afterHours'], startHours))
    .flatMap((visit) => reachOf(visit) ?? []);
  if (around.length === 0) return null;
  const largest = around.reduce((top, one) => (one.value > top.value ? one : top));
  const later = visits.filter(({ startHours }) => compareReaches(startHours, started + limits['antibiotic.hours']));
  const judged = later.map((visit) => ({ visit, compared: compareVisits(largest.visit, visit, reachOf) })).find(({ compared }) => compared.length > 0);
  if (!judged || judged.compared.some(isDown)) return null;
  return raised(judged.compared, judged.visit, judged.visit.startHours - started);
}

function raised(compared: readonly Compared[], visit: Visit, hours: number): Raised {
  const [first] = compared;
  const shown = compared.map(({ name, before, after }) => `${SAID[name][0]} ${wordsForNumber(before.value)} → ${wordsForNumber(after.value)}${SAID[name][1]}`);
  return {
    level: 'today',
    knownHours: visit.knownHours,
    numbers: compared.flatMap(({ name, unit, before, after, change }) => [
      seenWords(`${name}Before`, before, unit),
      seenWords(name, after, unit),
      { name: `${name}SmallestDetectableChange`, value: change.smallestDetectable, unit },
    ]),
    photos: [...first.before.photos, ...first.after.photos],
    checkIns: [],
    sentence: `${wordsForHours(hours)} after the antibiotic was started nothing is down by what we can see: ${shown.join(', ')}.`,
  };
}

export const ANTIBIOTIC_NO_BETTER: Rule = { id: 'antibiotic-no-better', kind: 'measurement', ownRiskLevel: false, highest: 'today', judge };
