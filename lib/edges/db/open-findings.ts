import type { OpenFinding } from '../../review/place-case';
import type { Queries } from './open-database';

/** A photo that could not be measured stays on the list for so long. Ours. */
const RETAKE_DAYS = 14;
const DAY_MS = 86_400_000;

/** When a photo that could not be measured leaves the list by itself. */
export const retakeEndsAt = (foundAt: string): Date => new Date(Date.parse(foundAt) + RETAKE_DAYS * DAY_MS);

/**
 * All that is open on a case. A person's word closes what a rule had found until then, except a question to the
 * clinician; somebody who sends a check-in is silent no longer; what is wet again no longer looks dry. And the newest
 * photo, where it could not be measured. Once the case is closed only what was found later counts: symptoms. The times in these tables are all written in one form, so that the texts compare
 * as the moments do.
 */
export async function openFindings(queries: Queries, episodeId: string, now: Date): Promise<OpenFinding[]> {
  const since = new Date(now.getTime() - RETAKE_DAYS * DAY_MS);
  return queries.$queryRaw<OpenFinding[]>`
    SELECT f.id, f.episodeId, f.rule, f.level, json_extract(f.json, '$.at') AS at, strftime('%Y-%m-%dT%H:%M:%fZ', f.foundAt) AS foundAt
    FROM Episode e JOIN Finding f ON f.episodeId = e.id
    WHERE e.id = ${episodeId} AND (e.closedAt IS NULL OR f.foundAt > e.closedAt)
      AND json_extract(f.json, '$.closed') IS NULL
      AND NOT EXISTS (SELECT 1 FROM Resolution r WHERE r.episodeId = f.episodeId AND r.rule = f.rule AND r.action <> 'askClinician' AND r.at >= f.foundAt)
      AND NOT (f.rule = 'silent' AND EXISTS (SELECT 1 FROM CheckIn c WHERE c.episodeId = f.episodeId AND c.receivedAt > f.foundAt))
      AND NOT (f.rule = 'dry' AND EXISTS (SELECT 1 FROM Finding w WHERE w.episodeId = f.episodeId AND w.rule = 'relapse' AND w.foundAt >= f.foundAt))
    UNION ALL
    SELECT p.id, p.episodeId, 'photo-not-measured', 'retake', strftime('%Y-%m-%dT%H:%M:%fZ', a.finishedAt), strftime('%Y-%m-%dT%H:%M:%fZ', a.finishedAt)
    FROM Episode e JOIN Photo p ON p.episodeId = e.id JOIN Analysis a ON a.photoId = p.id
    WHERE e.id = ${episodeId} AND e.closedAt IS NULL AND a.outcome = 'retake' AND a.finishedAt > ${since} AND p.kind = 'toe'
      AND NOT EXISTS (SELECT 1 FROM Photo n WHERE n.episodeId = p.episodeId AND n.kind = 'toe' AND n.receivedAt > p.receivedAt)
      AND NOT EXISTS (SELECT 1 FROM Resolution r WHERE r.episodeId = p.episodeId AND r.rule = 'photo-not-measured' AND r.action <> 'askClinician' AND r.at >= a.finishedAt)`;
}
