import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { scheduleDaysSince } from '../care/schedule-day';
import type { Finding } from '../decide/finding';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import type { Queries } from '../edges/db/open-database';
import { openFindings } from '../edges/db/open-findings';
import { type AskedRow, askedOf, findingWords, gatesOfPhotos, readClinic, reachOf, reviewRows, reviewStamp } from '../edges/db/review-rows';
import { GATE_ADVICE, type GateId } from '../photo/reasons';
import { LEVEL_WORDS, MOST_ROWS, PHOTO_NOT_MEASURED } from '../review/constants';
import { describeWait } from '../review/describe-wait';
import { orderQueue, type QueuedCase } from '../review/order-queue';
import type { DescribedSeries } from '../trend/describe-series';
import type { Trend } from '../trend/describe-trend';
import { aboutRule } from './about-rule';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import type { ReachTrend, ReviewList, ReviewRow } from './review-row';
import { store } from './store';

const COVERAGE = 2;
const MS_PER_DAY = 86_400_000;

/** The list of a clinic, worst first. Asked with the stamp of before it answers shortly where nothing has changed. */
export async function loadReview(actor: Actor, since: string | null): Promise<Answer> {
  const may = guard(actor, 'review.read', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const { database } = await store();
  const stamp = await reviewStamp(database);
  if (since === stamp) return answer({ stamp });
  const moment = now();
  // Noted when somebody opens the list; that it is kept up to date on their screen is the same look.
  if (since === null) {
    await noteAudit(database, { clinicId: actor.clinicId, episodeId: null, actor: actorName(actor), action: 'review.read', rule: may.rule, at: moment });
  }
  return answer({ stamp, ...(await reviewList(database, actor, moment)) } satisfies ReviewList);
}

async function reviewList(queries: Queries, { clinicId, role, staffId }: Extract<Actor, { staffId: string }>, moment: Date): Promise<Omit<ReviewList, 'stamp'>> {
  const [clinic, open] = [await readClinic(queries, clinicId), await openFindings(queries, clinicId, moment)];
  const asked = new Map((await askedOf(queries, [...new Set(open.map(({ episodeId }) => episodeId))])).map((row) => [row.episodeId, row]));
  const queue = orderQueue(open, {
    limits: JSON.parse(clinic.reviewLimits) as Record<string, number>,
    now: moment.toISOString(),
    askedAt: new Map([...asked.values()].map(({ episodeId, at }) => [episodeId, at])),
    answersQuestions: role !== 'nurse',
  });
  const shown = queue.slice(0, MOST_ROWS);
  const nameOf = new Map(clinic.staff.map(({ id, name }) => [id, name]));
  const facts = await rowFacts(queries, shown, moment);
  const rows = shown.map((one) => rowOf(one, facts, { asked: asked.get(one.episodeId), nameOf, staffId, moment }));
  return { clinic: clinic.name, rows, more: queue.length - shown.length };
}

/** Few questions for all rows together, never one for each. */
async function rowFacts(queries: Queries, shown: readonly QueuedCase[], moment: Date) {
  const ids = shown.map(({ episodeId }) => episodeId);
  const firsts = shown.map(({ first }) => first.id);
  const [cases, reach, words, gates] = [
    await reviewRows(queries, ids, moment),
    await reachOf(queries, ids),
    await findingWords(queries, firsts),
    await gatesOfPhotos(queries, firsts),
  ];
  return {
    cases: new Map(cases.map((row) => [row.id, row])),
    reach: new Map(reach.map((row) => [row.episodeId, row])),
    why: new Map([
      ...words.map(({ id, json }): [string, string] => [id, (JSON.parse(json) as Finding).sentence]),
      ...gates.map(({ photoId, gates: failed }): [string, string] => [photoId, whyNotMeasured(JSON.parse(failed) as GateId[])]),
    ]),
  };
}

/** The first sentence of what the patient was told: what is wrong with the photo. */
export function whyNotMeasured(gates: readonly GateId[]): string {
  const said = gates.map((gate) => GATE_ADVICE[gate]?.split(/(?<=\.) /)[0]).filter(Boolean);
  return ['The newest photo could not be measured.', ...said].join(' ');
}

interface Reader {
  readonly asked: AskedRow | undefined;
  readonly nameOf: ReadonlyMap<string, string>;
  readonly staffId: string;
  readonly moment: Date;
}

function rowOf(one: QueuedCase, { cases, reach, why }: Awaited<ReturnType<typeof rowFacts>>, { asked, nameOf, staffId, moment }: Reader): ReviewRow {
  const { episodeId, first, others, waitedMinutes, limitMinutes } = one;
  const found = cases.get(episodeId);
  const procedureAt = (found?.procedure?.at ?? moment).toISOString();
  return {
    episodeId,
    caseCode: found?.caseCode ?? '',
    level: first.level,
    levelWords: LEVEL_WORDS[first.level],
    day: scheduleDaysSince(procedureAt, moment.toISOString(), found?.timeZone ?? 'UTC'),
    why: why.get(first.id) ?? (first.rule === PHOTO_NOT_MEASURED ? whyNotMeasured([]) : first.rule),
    also: [...new Set(others.map(({ rule }) => aboutRule(rule)))].filter((name) => name !== aboutRule(first.rule)),
    wait: describeWait(waitedMinutes, limitMinutes),
    reach: reachTrend(reach.get(episodeId), (moment.getTime() - Date.parse(procedureAt)) / MS_PER_DAY),
    openWith: found?.claim ? { name: found.claim.staff.name, mine: found.claim.staffId === staffId } : null,
    asked: one.asked && asked ? { by: staffName(asked.by, nameOf), note: asked.reason } : null,
  };
}

/** `nurse:ID` → the name. */
export const staffName = (by: string, nameOf: ReadonlyMap<string, string>): string => nameOf.get(by.slice(by.indexOf(':') + 1)) ?? by;

/** Of the kept trend what a small drawing needs. */
export function reachTrend(row: { readonly reach: string | null; readonly refused: string | null } | undefined, toDay: number): ReachTrend {
  const reach = row?.reach ? (JSON.parse(row.reach) as DescribedSeries) : null;
  const refused = row?.refused ? (JSON.parse(row.refused) as Trend['refused']) : [];
  return {
    points: (reach?.points ?? []).map(({ day, value, u }) => ({ day, mm: value, U: COVERAGE * u })),
    stretches: reach?.stretches ?? [],
    refusedDays: [...new Set([...refused, ...(reach?.gaps ?? [])].map(({ day }) => day))],
    toDay,
  };
}
