import type { Queries } from './open-database';

/** What a row of the list is made from. Times are ISO 8601, UTC. */
export interface ReviewRowWords {
  readonly episodeId: string;
  readonly caseCode: string;
  readonly timeZone: string;
  readonly procedureAt: string | null;
  /** JSON: all that is open. */
  readonly findings: string;
  /** JSON: what the clinician was asked; null where nothing was. */
  readonly question: string | null;
  /** Why the case is here: the sentence of its first finding; null where that is a photo. */
  readonly sentence: string | null;
  /** JSON: why the photo that is its first cause could not be measured; null where that is a finding. */
  readonly gates: string | null;
  /** JSON of the trend's reach, and of the photos that were refused. */
  readonly reach: string | null;
  readonly refused: string | null;
  /** Who has the case open. */
  readonly claimStaffId: string | null;
  readonly claimName: string | null;
}

/** Changes with everything that the list shows; cheap to ask. */
export async function reviewStamp(queries: Queries): Promise<string> {
  const [row] = await queries.$queryRaw<{ stamp: string }[]>`
    SELECT (SELECT coalesce(max(rowid), 0) FROM Finding) || '.' || (SELECT coalesce(max(rowid), 0) FROM Resolution) || '.' ||
      (SELECT coalesce(max(rowid), 0) FROM Assessment) || '.' || (SELECT coalesce(max(rowid), 0) FROM Analysis) || '.' ||
      (SELECT coalesce(max(rowid), 0) FROM CheckIn) || '.' || (SELECT coalesce(max(rowid), 0) FROM Closing) || '.' || (SELECT count(*) || '.' || coalesce(max(claimedAt), '') FROM ReviewClaim) AS stamp`;
  return row.stamp;
}

/** How the reader's list is cut. */
export interface ReviewCut {
  readonly clinicId: string;
  readonly answersQuestions: boolean;
  readonly most: number;
}

/**
 * The first rows of the list, in the order of `orderQueue`: each half, what a clinician was asked and what not, comes from
 * the index in its order, and never more than is shown.
 */
export async function reviewRows(queries: Queries, { clinicId, answersQuestions, most }: ReviewCut, now: Date): Promise<ReviewRowWords[]> {
  return queries.$queryRaw<ReviewRowWords[]>`
    WITH shown AS (
      SELECT episodeId, levelRank, sinceAt, CASE WHEN levelRank = 0 THEN 0 WHEN asked = ${answersQuestions} THEN 1 ELSE 2 END AS place FROM (
        SELECT * FROM (SELECT episodeId, levelRank, sinceAt, asked FROM OpenCase WHERE clinicId = ${clinicId} AND asked = 0 ORDER BY levelRank, sinceAt, episodeId LIMIT ${most})
        UNION ALL
        SELECT * FROM (SELECT episodeId, levelRank, sinceAt, asked FROM OpenCase WHERE clinicId = ${clinicId} AND asked = 1 ORDER BY levelRank, sinceAt, episodeId LIMIT ${most})
      ) ORDER BY place, levelRank, sinceAt, episodeId LIMIT ${most}
    )
    SELECT c.episodeId, e.caseCode, e.timeZone, strftime('%Y-%m-%dT%H:%M:%fZ', p.at) AS procedureAt, c.findings, c.question, c.reach, c.refused,
      (SELECT json_extract(f.json, '$.sentence') FROM Finding f WHERE f.id = c.firstId) AS sentence,
      (SELECT a.gates FROM Analysis a WHERE a.photoId = c.firstId AND a.outcome = 'retake' ORDER BY a.finishedAt DESC LIMIT 1) AS gates,
      k.staffId AS claimStaffId, s.name AS claimName
    FROM shown JOIN OpenCase c ON c.episodeId = shown.episodeId JOIN Episode e ON e.id = c.episodeId
    LEFT JOIN Procedure p ON p.episodeId = e.id
    LEFT JOIN ReviewClaim k ON k.episodeId = e.id AND k.endsAt > ${now}
    LEFT JOIN Staff s ON s.id = k.staffId
    ORDER BY shown.place, shown.levelRank, shown.sinceAt, shown.episodeId`;
}

/** How many cases wait at a clinic. */
export async function countOpenCases(queries: Queries, clinicId: string): Promise<number> {
  return queries.openCase.count({ where: { clinicId } });
}

/** The findings themselves, by id. */
export async function findingWords(queries: Queries, ids: readonly string[]) {
  return queries.finding.findMany({ where: { id: { in: [...ids] } }, select: { id: true, json: true } });
}

export async function readClinic(queries: Queries, id: string) {
  return queries.clinic.findUniqueOrThrow({ where: { id }, select: { name: true, timeZone: true, reviewLimits: true, staff: { select: { id: true, name: true } } } });
}
