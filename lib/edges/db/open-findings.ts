import type { OpenFinding } from '../../review/order-queue';
import type { Queries } from './open-database';

/** A photo that could not be measured stays on the list for so long. Ours. */
const RETAKE_DAYS = 14;
const DAY_MS = 86_400_000;

/**
 * All that is open at a clinic, or on one of its cases, in one query. A person's word closes what a rule had found until
 * then, except a question to the clinician; somebody who sends a check-in is silent no longer; what is wet again no
 * longer looks dry. And the newest photo, where it could not be measured. The times in these tables are all written in
 * one form, so that the texts compare as the moments do.
 */
export async function openFindings(queries: Queries, clinicId: string, now: Date, episodeId: string | null = null): Promise<OpenFinding[]> {
  const since = new Date(now.getTime() - RETAKE_DAYS * DAY_MS);
  return queries.$queryRaw<OpenFinding[]>`
    SELECT f.id, f.episodeId, f.rule, f.level, json_extract(f.json, '$.at') AS at, strftime('%Y-%m-%dT%H:%M:%fZ', f.foundAt) AS foundAt
    FROM Episode e JOIN Finding f ON f.episodeId = e.id
    WHERE e.clinicId = ${clinicId} AND e.closedAt IS NULL AND (${episodeId} IS NULL OR e.id = ${episodeId})
      AND json_extract(f.json, '$.closed') IS NULL
      AND NOT EXISTS (SELECT 1 FROM Resolution r WHERE r.episodeId = f.episodeId AND r.rule = f.rule AND r.action <> 'askClinician' AND r.at >= f.foundAt)
      AND NOT (f.rule = 'silent' AND EXISTS (SELECT 1 FROM CheckIn c WHERE c.episodeId = f.episodeId AND c.receivedAt > f.foundAt))
      AND NOT (f.rule = 'dry' AND EXISTS (SELECT 1 FROM Finding w WHERE w.episodeId = f.episodeId AND w.rule = 'relapse' AND w.foundAt >= f.foundAt))
    UNION ALL
    SELECT p.id, p.episodeId, 'photo-not-measured', 'retake', strftime('%Y-%m-%dT%H:%M:%fZ', a.finishedAt), strftime('%Y-%m-%dT%H:%M:%fZ', a.finishedAt)
    FROM Analysis a JOIN Photo p ON p.id = a.photoId JOIN Episode e ON e.id = p.episodeId
    WHERE a.outcome = 'retake' AND a.finishedAt > ${since} AND p.kind = 'toe'
      AND e.clinicId = ${clinicId} AND e.closedAt IS NULL AND (${episodeId} IS NULL OR e.id = ${episodeId})
      AND NOT EXISTS (SELECT 1 FROM Photo n WHERE n.episodeId = p.episodeId AND n.kind = 'toe' AND n.receivedAt > p.receivedAt)
      AND NOT EXISTS (SELECT 1 FROM Resolution r WHERE r.episodeId = p.episodeId AND r.rule = 'photo-not-measured' AND r.action <> 'askClinician' AND r.at >= a.finishedAt)`;
}
