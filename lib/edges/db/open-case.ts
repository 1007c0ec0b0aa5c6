import { PHOTO_NOT_MEASURED } from '../../review/constants';
import { placeCase, rankOfLevel } from '../../review/place-case';
import type { Queries } from './open-database';
import { openFindings, retakeEndsAt } from './open-findings';

/** A question to the clinician that nobody has answered yet. */
export interface OpenQuestion {
  readonly by: string;
  readonly reason: string;
  /** ISO 8601, UTC */
  readonly at: string;
}

/** The case's last word, where that is a question to the clinician. */
export async function openQuestion(queries: Queries, episodeId: string): Promise<OpenQuestion | null> {
  const newest = await queries.$queryRaw<(OpenQuestion & { action: string })[]>`
    SELECT by, reason, action, strftime('%Y-%m-%dT%H:%M:%fZ', at) AS at FROM Resolution WHERE episodeId = ${episodeId}
    ORDER BY Resolution.at DESC, rowid DESC LIMIT 1`;
  const last = newest.at(0);
  return last?.action === 'askClinician' ? { by: last.by, reason: last.reason, at: last.at } : null;
}

/** The course of reach and the refused photos, as JSON, as the case was last assessed. */
export async function reachOf(queries: Queries, episodeId: string): Promise<{ readonly reach: string | null; readonly refused: string | null }> {
  const [row] = await queries.$queryRaw<{ reach: string | null; refused: string | null }[]>`
    SELECT json_extract(trend, '$.series.reach') AS reach, json_extract(trend, '$.refused') AS refused
    FROM Assessment WHERE episodeId = ${episodeId} ORDER BY madeAt DESC LIMIT 1`;
  return row ?? { reach: null, refused: null };
}

/**
 * Makes a case's row of the review list anew. Call within the transaction of whatever changed the case: what is open
 * and what the list shows are then the same at every moment.
 */
export async function renewOpenCase(queries: Queries, episodeId: string, now: Date): Promise<void> {
  const findings = await openFindings(queries, episodeId, now);
  const question = await openQuestion(queries, episodeId);
  const placed = placeCase(findings, question?.at ?? null);
  if (placed === null) {
    await queries.openCase.deleteMany({ where: { episodeId } });
    return;
  }
  const { clinicId } = await queries.episode.findUniqueOrThrow({ where: { id: episodeId }, select: { clinicId: true } });
  const retake = findings.find(({ rule }) => rule === PHOTO_NOT_MEASURED);
  const row = {
    clinicId,
    levelRank: rankOfLevel(placed.first.level),
    sinceAt: new Date(placed.first.at),
    asked: placed.asked,
    firstId: placed.first.id,
    findings: JSON.stringify(findings),
    question: question && JSON.stringify(question),
    ...(await reachOf(queries, episodeId)),
    changesAt: retake ? retakeEndsAt(retake.foundAt) : null,
  };
  await queries.openCase.upsert({ where: { episodeId }, create: { episodeId, ...row }, update: row });
}

/** Makes those rows anew that change by themselves and are due. */
export async function renewDueCases(queries: Queries, now: Date): Promise<void> {
  const due = await queries.openCase.findMany({ where: { changesAt: { lte: now } }, select: { episodeId: true } });
  for (const { episodeId } of due) await renewOpenCase(queries, episodeId, now);
}
