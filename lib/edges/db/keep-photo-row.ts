import { newId } from './new-id';
import { renewOpenCase } from './open-case';
import type { Queries } from './open-database';

export interface PhotoWords {
  readonly episodeId: string;
  readonly clientId: string;
  readonly sha256: string;
  readonly kind: string;
  readonly lengthBytes: number;
}

/** Is this photo confirmed? */
export async function hasPhotoRow(queries: Queries, { episodeId, clientId, sha256 }: PhotoWords): Promise<boolean> {
  return (await queries.photo.findUnique({ where: { episodeId_clientId_sha256: { episodeId, clientId, sha256 } }, select: { id: true } })) !== null;
}

/**
 * One row and one job for a photo whose file is whole, however often it is asked for. Call within a transaction.
 * @returns whether it was added now
 */
export async function keepPhotoRow(queries: Queries, words: PhotoWords, receivedAt: Date): Promise<boolean> {
  if (await hasPhotoRow(queries, words)) return false;
  const { id } = await queries.photo.create({ data: { id: newId(), ...words, receivedAt } });
  await queries.job.create({ data: { photoId: id, state: 'waiting', attempts: 0, madeAt: receivedAt } });
  await renewOpenCase(queries, words.episodeId, receivedAt);
  return true;
}
