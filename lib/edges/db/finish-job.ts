import type { Finding } from '../../decide/finding';
import { addFindings } from './add-finding';
import { newId } from './new-id';
import type { Database } from './open-database';

export interface AnalysisWords {
  readonly methodVersion: string;
  readonly outcome: 'measured' | 'retake' | 'held' | 'unread' | 'kept';
  readonly gates: readonly string[];
  readonly json: unknown;
  readonly viewSha256: string | null;
  /** Name of the packed map from which outlines can be drawn anew. */
  readonly mapSha256?: string | null;
  /** For a person to look at, where the photo gives cause by itself. */
  readonly findings: readonly Finding[];
}

/** Keeps the analysis, once, and has the rules asked again. A worker that comes too late changes nothing. */
export async function finishJob(
  database: Database,
  photo: { readonly id: string; readonly episodeId: string },
  { findings, gates, json, ...words }: AnalysisWords,
  finishedAt: Date,
): Promise<void> {
  await database.$transaction(async (queries) => {
    const key = { photoId: photo.id, methodVersion: words.methodVersion };
    if (await queries.analysis.findUnique({ where: { photoId_methodVersion: key }, select: { id: true } })) return;
    await queries.analysis.create({
      data: { id: newId(), photoId: photo.id, ...words, gates: JSON.stringify(gates), json: json === null ? null : JSON.stringify(json), finishedAt },
    });
    await addFindings(queries, photo.episodeId, findings, finishedAt);
    await queries.job.updateMany({ where: { photoId: photo.id }, data: { state: 'done', finishedAt, leaseEndsAt: null } });
    await queries.episode.updateMany({ where: { id: photo.episodeId }, data: { assessAt: finishedAt } });
  });
}

/** Puts a job back after an error; the attempt has been counted. */
export async function returnJob(database: Database, photoId: string, workerId: string, trouble: string): Promise<void> {
  await database.job.updateMany({ where: { photoId, state: 'running', claimedBy: workerId }, data: { state: 'waiting', leaseEndsAt: null, trouble } });
}
