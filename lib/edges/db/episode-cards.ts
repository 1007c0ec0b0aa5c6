import type { Queries } from './open-database';

export interface CardRow {
  readonly serial: string;
  readonly barReadsMm: number | null;
  readonly madeAt: Date;
  readonly retiredAt: Date | null;
}

/** The cards that were given to one person, newest first. */
export async function episodeCards(queries: Queries, episodeId: string): Promise<CardRow[]> {
  return queries.card.findMany({ where: { episodeId }, orderBy: { madeAt: 'desc' }, select: { serial: true, barReadsMm: true, madeAt: true, retiredAt: true } });
}

export async function addEpisodeCard(queries: Queries, episodeId: string, serial: string, madeAt: Date): Promise<void> {
  await queries.card.create({ data: { serial, episodeId, barReadsMm: null, madeAt } });
}

/** What a ruler reads along the bar of this card. @returns false where the person has no such card */
export async function measureEpisodeCard(queries: Queries, episodeId: string, serial: string, barReadsMm: number): Promise<boolean> {
  return (await queries.card.updateMany({ where: { serial, episodeId, retiredAt: null }, data: { barReadsMm } })).count > 0;
}

/** Photos with this card count no longer. @returns false where the person has no such card, or this is the last */
export async function retireEpisodeCard(queries: Queries, episodeId: string, serial: string, retiredAt: Date): Promise<boolean> {
  const inUse = await queries.card.count({ where: { episodeId, retiredAt: null } });
  return inUse > 1 && (await queries.card.updateMany({ where: { serial, episodeId, retiredAt: null }, data: { retiredAt } })).count > 0;
}
