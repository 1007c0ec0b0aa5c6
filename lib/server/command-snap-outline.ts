import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { findPhoto } from '../edges/db/find-photo';
import { readDrawnPhoto } from '../edges/db/outline-versions';
import { budgetWords } from '../report/budget-words';
import { numberWords } from '../report/number-words';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { drawnSchema, measureAgain } from './measure-again';
import { store } from './store';

/** What the page is told of a line before it is kept. */
export interface SnappedOutline {
  /** [across, down] in the card's millimetres, as the camera shows it; null where the program's own stands again. */
  readonly line: readonly (readonly [number, number])[] | null;
  readonly numbers: readonly string[];
  /** Where the uncertainty of the number that the line decides comes from; empty where it has none. */
  readonly because: string;
}

const DECIDED = { erythema: 'erythemaArea', nailFoldMargin: 'reach', raw: 'rawArea' } as const;

/** A line through set points along the photo's edges, and what would be measured with it. Nothing is kept. */
export async function commandSnapOutline(actor: Actor, photoId: string, body: unknown): Promise<Answer> {
  const { database, settings } = await store();
  const may = guard(actor, 'outline.redraw', await findPhoto(database, photoId));
  if (!may.allowed) return refusedBy(may);
  const read = drawnSchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const again = await measureAgain(await readDrawnPhoto(database, photoId), read.data, settings.photoFolder);
  if ('problem' in again) return refusal(409, again.problem);
  const budget = again.kept.budget[DECIDED[read.data.outline]];
  return answer({ line: again.line, numbers: numberWords(again.measurements), because: budget ? budgetWords(budget) : '' } satisfies SnappedOutline);
}
