import { createHash } from 'node:crypto';
import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { checkInBodySchema, type CheckInReceipt, clientIdSchema } from '../care/patient-contract';
import { now } from '../edges/clock/now';
import { type CheckInRow, type CheckInWords, findCheckIn, keepCheckIn } from '../edges/db/keep-check-in';
import { noteAudit } from '../edges/db/note-audit';
import type { Queries } from '../edges/db/open-database';
import { type EpisodeRows, readEpisodeRows } from '../edges/db/read-episode-rows';
import { storeAssessment } from '../edges/db/store-assessment';
import { errorFacts, logEvent } from '../edges/log/log-event';
import type { Assessment } from '../pipeline/assess-episode';
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
    const entry = { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'checkIn.send', rule: may.rule, at };
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
  const rows = await readEpisodeRows(queries, words.episodeId);
  const said = assessWith(rows, words, at);
  const row = await keepCheckIn(queries, words, at, said.callNow);
  if (said.assessed) await storeAssessment(queries, words.episodeId, said.assessed, at);
  return row;
}

interface Said {
  readonly assessed: Assessment | null;
  readonly callNow: boolean;
}

/** Where the rules fail, the answers are kept all the same, and the person is told to call: nobody judged them. */
function assessWith(rows: EpisodeRows, words: CheckInWords, at: Date): Said {
  try {
    const id = words.clientId;
    const assessed = assessRows({ ...rows, checkIns: [...rows.checkIns, { ...words, id, receivedAt: at, callNow: false }] }, at);
    return { assessed, callNow: assessed.findings.some(({ level, closed }) => level === 'now' && closed === null) };
  } catch (error) {
    logEvent('rulesFailed', { episodeId: rows.id, ...errorFacts(error) });
    return { assessed: null, callNow: true };
  }
}
