import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { limitsSchema, type OwnLimits } from '../decide/limits-schema';
import { changeRuleBook, DEFAULT_RULE_BOOK, LIMIT_IDS } from '../decide/rule-book';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { addRuleBook, ruleBooksOf } from '../edges/db/rule-books';
import { lessSensitiveWords } from '../report/limit-words';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';

const words = (what: string) => z.string().trim().min(3, `${what} is needed.`).max(500, `${what} has at most 500 letters.`);

const bodySchema = z.strictObject({
  /** The version that was on the screen; 0 for the defaults. */
  from: z.number().int().min(0),
  changes: z.array(z.strictObject({ id: z.enum(LIMIT_IDS), value: z.number(), source: words('A source') })).min(1),
  reason: words('A reason'),
  /** The person has read which rules hear less. */
  confirmed: z.boolean(),
});

/** A new version of the clinic's limits. No rule can be switched off: a limit stays within its range. */
export async function commandChangeRuleBook(actor: Actor, body: unknown): Promise<Answer> {
  const may = guard(actor, 'rules.change', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood', { sentence: read.error.issues[0].message });
  const { from, changes, reason, confirmed } = read.data;
  const { database } = await store();
  const { clinicId } = actor;
  const madeAt = now();
  return database.$transaction(async (queries) => {
    const newest = (await ruleBooksOf(queries, clinicId)).at(0);
    const number = newest?.number ?? 0;
    if (number !== from) return refusal(409, 'changed', { sentence: 'Somebody has changed the rule book meanwhile. Look at it again.' });
    const wanted: OwnLimits = { ...newest?.limits, ...Object.fromEntries(changes.map(({ id, value }) => [id, value])) };
    const checked = limitsSchema.safeParse(wanted);
    if (!checked.success) return refusal(400, 'notAllowed', { sentence: checked.error.issues[0].message });
    const [before, after] = [newest?.limits ?? {}, wanted].map((own) => ({ ...DEFAULT_RULE_BOOK.limits, ...own }));
    if (LIMIT_IDS.every((id) => before[id] === after[id])) return refusal(400, 'notAllowed', { sentence: 'That is the limit already.' });
    const less = lessSensitiveWords(before, after);
    if (less.length > 0 && !confirmed) return refusal(409, 'lessSensitive', { sentences: less });
    const sources = { ...newest?.sources, ...Object.fromEntries(changes.map(({ id, source }) => [id, source])) };
    await addRuleBook(queries, clinicId, { number: number + 1, limits: wanted, sources, reason, madeBy: actorName(actor), madeAt });
    await noteAudit(queries, { clinicId, episodeId: null, actor: actorName(actor), action: `rules.change ${changes.map(({ id }) => id).join(' ')}`, rule: may.rule, at: madeAt });
    const book = changeRuleBook(wanted as Record<string, number>);
    return answer({ number: number + 1, version: 'book' in book ? book.book.version : '' });
  });
}
