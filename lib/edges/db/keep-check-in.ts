import { newId } from './new-id';
import { renewOpenCase } from './open-case';
import type { Queries } from './open-database';

export interface CheckInWords {
  readonly episodeId: string;
  readonly clientId: string;
  readonly kind: string;
  readonly at: string;
  /** JSON */
  readonly answers: string;
  readonly worry: string | null;
  readonly hasPhoto: boolean;
  readonly bodySha256: string;
}

export interface CheckInRow extends CheckInWords {
  readonly id: string;
  readonly receivedAt: Date;
  readonly callNow: boolean;
}

/** The row of exactly these words under this name, if they came before. */
export async function findCheckIn(queries: Queries, { episodeId, clientId, bodySha256 }: CheckInWords): Promise<CheckInRow | null> {
  return queries.checkIn.findUnique({ where: { episodeId_clientId_bodySha256: { episodeId, clientId, bodySha256 } } });
}

/** Adds it and has the rules asked again. Call within a transaction, after `findCheckIn` found nothing in it. */
export async function keepCheckIn(queries: Queries, words: CheckInWords, receivedAt: Date, callNow: boolean): Promise<CheckInRow> {
  const row = await queries.checkIn.create({ data: { id: newId(), ...words, receivedAt, callNow } });
  await queries.episode.updateMany({ where: { id: words.episodeId }, data: { assessAt: receivedAt } });
  await renewOpenCase(queries, words.episodeId, receivedAt);
  return row;
}
