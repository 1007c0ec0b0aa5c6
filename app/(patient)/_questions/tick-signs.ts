import type { Answers } from '../../../lib/care/answers';
import type { TickedSign } from './asked-signs';

/** "None of these" is an answer of its own. Ticked: every sign that was listed is a "no". */
export type Tick = TickedSign | 'none';

const without = (answers: Answers, listed: readonly TickedSign[]): Answers =>
  Object.fromEntries(Object.entries(answers).filter(([key]) => !listed.includes(key as TickedSign)));

/** Which boxes the answers mean. */
export function tickedSigns(answers: Answers, listed: readonly TickedSign[]): Tick[] {
  const on = listed.filter((sign) => answers[sign] === true);
  return on.length === 0 && listed.every((sign) => answers[sign] === false) ? ['none'] : on;
}

/** The answers after a box was pressed. With nothing ticked nothing was answered: absent, not "no". */
export function tickSigns(answers: Answers, listed: readonly TickedSign[], tick: Tick, on: boolean): Answers {
  const rest = without(answers, listed);
  const none = Object.fromEntries(listed.map((sign) => [sign, false]));
  if (tick === 'none') return on ? { ...rest, ...none } : rest;
  const ticked = listed.filter((sign) => (sign === tick ? on : answers[sign] === true));
  return ticked.length === 0 ? rest : { ...rest, ...none, ...Object.fromEntries(ticked.map((sign) => [sign, true])) };
}
