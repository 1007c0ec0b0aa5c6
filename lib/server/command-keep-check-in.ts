import { createHash } from 'node:crypto';
import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { checkInBodySchema, type CheckInReceipt, clientIdSchema } from '../care/patient-contract';
import { ALL_RULES } from '../decide/all-rules';
import type { Finding } from '../decide/finding';
import { now } from '../edges/clock/now';
import { addFindings } from '../edges/db/add-finding';
import { type CheckInRow, type CheckInWords, findCheckIn, keepCheckIn } from '../edges/db/keep-check-in';
import { noteAudit } from '../edges/db/note-audit';
import type { Queries } from '../edges/db/open-database';
import { readRuleRows, type RuleRows } from '../edges/db/read-rule-rows';
import { errorFacts, logEvent } from '../edges/log/log-event';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { assessRows } from './assess-rows';
import { ownEpisode } from './own-episode';
import { store } from './store';

/** Keeps the answers and asks the rules at once: a warning sign waits for no analysis. */
export async function commandKeepCheckIn(actor: Actor, clientId: string, body: unknown): Promise<Answer> {
  const may = guard(actor, 'checkIn.send', ownEpisode(actor));
  if (!may.allowed || actor.role !== 'patient') return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = z.object({ clientId: clientIdSchema, body: checkInBodySchema }).safeParse({ clientId, body });
  if (!read.success) return refusal(400, 'notUnderstood', { detail: z.prettifyError(read.error) });
  const words = wordsOf(may.episodeId, read.data);
  const at = now();
  const { database } = await store();
  const row = await database.$transaction(async (queries) => {
    const before = await findCheckIn(queries, words);
    if (before !== null) return before;
    const entry = { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'checkIn.send' as const, rule: may.rule, at };
    await noteAudit(queries, entry);
    return keepAndAssess(queries, words, at);
  });
  const receipt: CheckInReceipt = { clientId, receivedAt: row.receivedAt.toISOString(), callNow: row.callNow };
  return answer(receipt);
}

/** The answers in one fixed order, so that the same words have the same hash. */
function wordsOf(episodeId: string, { clientId, body }: { clientId: string; body: z.infer<typeof checkInBodySchema> }): CheckInWords {
  const { kind, at, worry = null, hasPhoto } = body;
  const answers = JSON.stringify(Object.fromEntries(Object.entries(body.answers).sort(([a], [b]) => (a < b ? -1 : 1))));
  const bodySha256 = createHash('sha256').update(JSON.stringify([kind, at, answers, worry, hasPhoto])).digest('hex');
  return { episodeId, clientId, kind, at, answers, worry, hasPhoto, bodySha256 };
}

async function keepAndAssess(queries: Queries, words: CheckInWords, at: Date): Promise<CheckInRow> {
  const rows = await readRuleRows(queries, words.episodeId);
  const { findings, callNow } = symptomsAfter(rows, words, at);
  await addFindings(queries, words.episodeId, findings, at);
  return keepCheckIn(queries, words, at, callNow);
}

/** Symptoms only: what a photo shows, or that none came, is judged when the photo has been worked on. */
const SYMPTOM_RULES: ReadonlySet<string> = new Set(ALL_RULES.filter(({ kind }) => kind === 'symptom').map(({ id }) => id));

/** Where the rules fail, the answers are kept all the same, and the person is told to call: nobody judged them. */
function symptomsAfter(rows: RuleRows, words: CheckInWords, at: Date): { findings: Finding[]; callNow: boolean } {
  try {
    const added = { ...words, id: words.clientId, receivedAt: at, callNow: false };
    const { findings } = assessRows({ ...rows, checkIns: [...rows.checkIns, added] }, at);
    // A warning sign stays one until a person has looked.
    const callNow = findings.some(({ level, closed }) => level === 'now' && closed === null);
    return { findings: findings.filter(({ rule }) => SYMPTOM_RULES.has(rule)), callNow };
  } catch (error) {
    logEvent('rulesFailed', { episodeId: rows.id, ...errorFacts(error) });
    return { findings: [], callNow: true };
  }
}
