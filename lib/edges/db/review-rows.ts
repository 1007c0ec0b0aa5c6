import type { Queries } from './open-database';

/** A question to the clinician that nobody has answered yet. */
export interface AskedRow {
  readonly episodeId: string;
  readonly by: string;
  readonly reason: string;
  /** ISO 8601, UTC */
  readonly at: string;
}

export interface ReachRow {
  readonly episodeId: string;
  /** JSON of the trend's reach, and of the photos that were refused. */
  readonly reach: string | null;
  readonly refused: string | null;
}

/** Changes with everything that the list shows; cheap to ask. */
export async function reviewStamp(queries: Queries): Promise<string> {
  const [row] = await queries.$queryRaw<{ stamp: string }[]>`
    SELECT (SELECT coalesce(max(rowid), 0) FROM Finding) || '.' || (SELECT coalesce(max(rowid), 0) FROM Resolution) || '.' ||
      (SELECT coalesce(max(rowid), 0) FROM Assessment) || '.' || (SELECT coalesce(max(rowid), 0) FROM Analysis) || '.' ||
      (SELECT coalesce(max(rowid), 0) FROM CheckIn) || '.' || (SELECT count(*) || '.' || coalesce(max(claimedAt), '') FROM ReviewClaim) AS stamp`;
  return row.stamp;
}

/** Of these episodes, those whose last word is a question to the clinician. */
export async function askedOf(queries: Queries, episodeIds: readonly string[]): Promise<AskedRow[]> {
  return queries.$queryRaw<AskedRow[]>`
    SELECT r.episodeId, r.by, r.reason, strftime('%Y-%m-%dT%H:%M:%fZ', r.at) AS at FROM json_each(${JSON.stringify(episodeIds)}) AS wanted JOIN Resolution r ON r.episodeId = wanted.value
    WHERE r.action = 'askClinician'
      AND NOT EXISTS (SELECT 1 FROM Resolution n WHERE n.episodeId = r.episodeId AND (n.at > r.at OR (n.at = r.at AND n.rowid > r.rowid)))`;
}

/** The course of reach of these episodes, as it was last assessed. */
export async function reachOf(queries: Queries, episodeIds: readonly string[]): Promise<ReachRow[]> {
  return queries.$queryRaw<ReachRow[]>`
    SELECT a.episodeId, json_extract(a.trend, '$.series.reach') AS reach, json_extract(a.trend, '$.refused') AS refused
    FROM json_each(${JSON.stringify(episodeIds)}) AS wanted
    JOIN Assessment a ON a.id = (SELECT n.id FROM Assessment n WHERE n.episodeId = wanted.value ORDER BY n.madeAt DESC LIMIT 1)`;
}

/** What a row of the list says, beside its findings. */
export async function reviewRows(queries: Queries, episodeIds: readonly string[], now: Date) {
  return queries.episode.findMany({
    where: { id: { in: [...episodeIds] } },
    select: {
      id: true,
      caseCode: true,
      timeZone: true,
      procedure: { select: { at: true } },
      claim: { where: { endsAt: { gt: now } }, select: { staffId: true, staff: { select: { name: true } } } },
    },
  });
}

/** The findings themselves, by id. */
export async function findingWords(queries: Queries, ids: readonly string[]) {
  return queries.finding.findMany({ where: { id: { in: [...ids] } }, select: { id: true, json: true } });
}

/** Why the newest analysis of these photos measured nothing. */
export async function gatesOfPhotos(queries: Queries, photoIds: readonly string[]) {
  return queries.analysis.findMany({ where: { photoId: { in: [...photoIds] }, outcome: 'retake' }, orderBy: { finishedAt: 'asc' }, select: { photoId: true, gates: true } });
}

export async function readClinic(queries: Queries, id: string) {
  return queries.clinic.findUniqueOrThrow({ where: { id }, select: { name: true, timeZone: true, reviewLimits: true, staff: { select: { id: true, name: true } } } });
}
