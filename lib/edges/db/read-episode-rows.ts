import { EPISODE_PARTS } from './episode-parts';
import type { Queries } from './open-database';

/**
 * Everything about one episode, with whole analyses and every outline: for the staff's pages. The rules are asked of less (`readRuleRows`).
 * @param newestPhotos how many of its photos are read, for an analysis is large; all of them unless told
 */
export async function readEpisodeRows(queries: Queries, id: string, newestPhotos?: number) {
  const rows = await queries.episode.findUniqueOrThrow({
    where: { id },
    include: {
      ...EPISODE_PARTS,
      photos: {
        orderBy: { receivedAt: 'desc' },
        take: newestPhotos,
        include: {
          analyses: { orderBy: { finishedAt: 'desc' }, take: 1 },
          outlines: { orderBy: { number: 'desc' } },
          job: { select: { state: true } },
        },
      },
    },
  });
  return { ...rows, photos: rows.photos.reverse() };
}

export type EpisodeRows = Awaited<ReturnType<typeof readEpisodeRows>>;
