import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { daysBetweenDates, scheduleDay } from '../care/schedule-day';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import type { Queries } from '../edges/db/open-database';
import { type OpenQuestion, renewDueCases } from '../edges/db/open-case';
import { countOpenCases, readClinic, type ReviewRowWords, reviewRows, reviewStamp } from '../edges/db/review-rows';
import { GATE_ADVICE, type GateId } from '../photo/reasons';
import { LEVEL_WORDS, MOST_ROWS } from '../review/constants';
import { describeWait } from '../review/describe-wait';
import { orderQueue, type QueuedCase } from '../review/order-queue';
import type { OpenFinding } from '../review/place-case';
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
  await renewDueCases(queries, moment);
  const answersQuestions = role !== 'nurse';
  const rows = new Map((await reviewRows(queries, { clinicId, answersQuestions, most: MOST_ROWS }, moment)).map((row) => [row.episodeId, row]));
  const all = await countOpenCases(queries, clinicId);
  const clinic = await readClinic(queries, clinicId);
  const asked = new Map([...rows].flatMap(([id, { question }]) => (question === null ? [] : [[id, JSON.parse(question) as OpenQuestion]])));
  const queue = orderQueue([...rows.values()].flatMap(({ findings }) => JSON.parse(findings) as OpenFinding[]), {
    limits: JSON.parse(clinic.reviewLimits) as Record<string, number>,
    now: moment.toISOString(),
    askedAt: new Map([...asked].map(([id, { at }]) => [id, at])),
    answersQuestions,
  });
  const zones = new Set([...rows.values()].map(({ timeZone }) => timeZone));
  const todayIn = new Map([...zones].map((zone) => [zone, scheduleDay(moment.toISOString(), zone)]));
  const reader = { asked, nameOf: new Map(clinic.staff.map(({ id, name }) => [id, name])), staffId, moment, todayIn };
  return { clinic: clinic.name, rows: queue.flatMap((one) => rowOf(one, rows.get(one.episodeId), reader)), more: all - rows.size };
}

/** The first sentence of what the patient was told: what is wrong with the photo. */
export function whyNotMeasured(gates: readonly GateId[]): string {
  const said = gates.map((gate) => GATE_ADVICE[gate]?.split(/(?<=\.) /)[0]).filter(Boolean);
  return ['The newest photo could not be measured.', ...said].join(' ');
}

interface Reader {
  readonly asked: ReadonlyMap<string, OpenQuestion>;
  readonly nameOf: ReadonlyMap<string, string>;
  readonly staffId: string;
  readonly moment: Date;
  /** Which day it is, by zone. */
  readonly todayIn: ReadonlyMap<string, string>;
}

function rowOf(one: QueuedCase, found: ReviewRowWords | undefined, { asked, nameOf, staffId, moment, todayIn }: Reader): ReviewRow[] {
  if (found === undefined) return [];
  const { episodeId, first, others, waitedMinutes, limitMinutes } = one;
  const { caseCode, timeZone, sentence, gates, claimStaffId, claimName } = found;
  const procedureAt = found.procedureAt ?? moment.toISOString();
  const question = asked.get(episodeId);
  return [
    {
      episodeId,
      caseCode,
      level: first.level,
      levelWords: LEVEL_WORDS[first.level],
      day: daysBetweenDates(scheduleDay(procedureAt, timeZone), todayIn.get(timeZone) ?? ''),
      why: sentence ?? whyNotMeasured(JSON.parse(gates ?? '[]') as GateId[]),
      also: [...new Set(others.map(({ rule }) => aboutRule(rule)))].filter((name) => name !== aboutRule(first.rule)),
      wait: describeWait(waitedMinutes, limitMinutes),
      reach: reachTrend(found, (moment.getTime() - Date.parse(procedureAt)) / MS_PER_DAY),
      openWith: claimStaffId === null ? null : { name: claimName ?? '', mine: claimStaffId === staffId },
      asked: one.asked && question ? { by: staffName(question.by, nameOf), note: question.reason } : null,
    },
  ];
}

/** `nurse:ID` → the name. */
export const staffName = (by: string, nameOf: ReadonlyMap<string, string>): string => nameOf.get(by.slice(by.indexOf(':') + 1)) ?? by;

/** Of the kept trend what a small drawing needs. */
export function reachTrend(row: { readonly reach: string | null; readonly refused: string | null }, toDay: number): ReachTrend {
  const reach = row.reach ? (JSON.parse(row.reach) as DescribedSeries) : null;
  const refused = row.refused ? (JSON.parse(row.refused) as Trend['refused']) : [];
  return {
    points: (reach?.points ?? []).map(({ day, value, u }) => ({ day, mm: value, U: COVERAGE * u })),
    stretches: reach?.stretches ?? [],
    refusedDays: [...new Set([...refused, ...(reach?.gaps ?? [])].map(({ day }) => day))],
    toDay,
  };
}
