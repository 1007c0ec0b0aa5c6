import { newId } from './new-id';
import type { Queries } from './open-database';

/** A photo with its newest analysis and the newest outlines that a person drew on it. */
export async function readDrawnPhoto(queries: Queries, photoId: string) {
  const found = await queries.photo.findUniqueOrThrow({
    where: { id: photoId },
    include: { analyses: { orderBy: { finishedAt: 'desc' }, take: 1 }, outlines: { orderBy: { number: 'desc' }, take: 1 } },
  });
  const { analyses, outlines, ...photo } = found;
  return { photo, analysis: analyses.at(0) ?? null, newest: outlines.at(0) ?? null };
}

export type DrawnPhoto = Awaited<ReturnType<typeof readDrawnPhoto>>;

export interface OutlineWords {
  readonly photoId: string;
  readonly episodeId: string;
  readonly number: number;
  readonly methodVersion: string;
  readonly outlines: unknown;
  readonly measurements: unknown;
  readonly madeBy: string;
  readonly reason: string;
}

/** Adds a version beside those that are there, and has the rules asked again. Call within a transaction. */
export async function addOutlineVersion(queries: Queries, { episodeId, outlines, measurements, ...words }: OutlineWords, madeAt: Date): Promise<void> {
  await queries.outlineVersion.create({ data: { id: newId(), ...words, outlines: JSON.stringify(outlines), measurements: JSON.stringify(measurements), madeAt } });
  await queries.episode.updateMany({ where: { id: episodeId }, data: { assessAt: madeAt } });
}
