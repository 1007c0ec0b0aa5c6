import { answeredYes } from '../answered';
import { compareExceeds, compareReaches } from '../compare';
import type { Raised, SeenNumber } from '../finding';
import { type Sign, signsSince } from '../signs';
import type { Rule, View } from '../view';
import type { Visit } from '../visits';

interface Reading {
  readonly celsius: number;
  readonly hours: number;
}

const readingsOf = ({ entries }: Visit): Reading[] =>
  entries.flatMap(({ answers, hours }) => (answers.feverC === undefined ? [] : [{ celsius: answers.feverC, hours }]));

/** Before day 3 these come with the procedure and make no symptom of a low reading. */
const EXPECTED_AT_FIRST: readonly Sign[] = ['warmth', 'newSwelling'];

/** Too cold counts with another symptom, or when the reading before was too cold as well. */
function isTooCold(view: View, visit: Visit): boolean {
  const { limits } = view;
  const isLow = ({ celsius }: Reading) => !compareReaches(celsius, limits['fever.lowCelsius']);
  if (!readingsOf(visit).some(isLow)) return false;
  const others = (['painOutOfProportion', 'dusky', 'cold', 'numb'] as const).some((question) => answeredYes(visit, question));
  const isEarly = !compareExceeds(visit.startHours, limits['early.hours']);
  const signs = signsSince(view, visit.startHours).filter((sign) => !(isEarly && EXPECTED_AT_FIRST.includes(sign)));
  if (others || signs.length > 0) return true;
  const readings = view.visits.flatMap(readingsOf);
  const isLowHere = (reading: Reading) => reading.hours >= visit.startHours && isLow(reading);
  return readings.some((reading, place) => {
    const before = readings[place - 1] as Reading | undefined;
    return before !== undefined && isLowHere(reading) && isLow(before) && reading.hours - before.hours <= limits['fever.lowAgainHours'];
  });
}

/** A red streak, fever, chills or confusion; or a temperature that is too low and not just one reading. */
function judge(view: View): Raised | null {
  const visit = view.visits.at(-1);
  if (!visit) return null;
  const own = readingsOf(visit);
  const seen = [
    ...(answeredYes(visit, 'streaks') ? ['a red streak'] : []),
    ...own.filter(({ celsius }) => compareReaches(celsius, view.limits['fever.celsius'])).map(({ celsius }) => `fever of ${celsius} °C`),
    ...(answeredYes(visit, 'chills') ? ['chills'] : []),
    ...(answeredYes(visit, 'confusion') ? ['confusion'] : []),
  ];
  const low = seen.length === 0 && isTooCold(view, visit);
  if (seen.length === 0 && !low) return null;
  const said = low ? [`a temperature of ${Math.min(...own.map(({ celsius }) => celsius))} °C, below ${view.limits['fever.lowCelsius']} °C`] : seen;
  return {
    level: 'now',
    knownHours: Math.max(...visit.entries.map(({ hours }) => hours)),
    numbers: own.map(({ celsius }): SeenNumber => ({ name: 'temperature', value: celsius, unit: 'Cel' })),
    photos: [],
    checkIns: visit.entries.map(({ at }) => at),
    sentence: `Reported: ${said.join(', ')}.`,
  };
}

export const STREAK_OR_FEVER: Rule = { id: 'streak-or-fever', kind: 'symptom', ownRiskLevel: false, highest: 'now', judge };
