import type { Queries } from './open-database';

/** The episode that a card was printed for; null for a serial that nobody was given. */
export async function cardOwner(queries: Queries, serial: string): Promise<string | null> {
  return (await queries.card.findUnique({ where: { serial }, select: { episodeId: true } }))?.episodeId ?? null;
}

/** Did the same file come before, with another check-in of the same episode? */
export async function cameBefore(queries: Queries, photo: { id: string; episodeId: string; sha256: string; receivedAt: Date }): Promise<boolean> {
  const { id, episodeId, sha256, receivedAt } = photo;
  return (await queries.photo.count({ where: { episodeId, sha256, id: { not: id }, receivedAt: { lte: receivedAt } } })) > 0;
}
