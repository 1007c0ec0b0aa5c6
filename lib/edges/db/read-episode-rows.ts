import type { Queries } from './open-database';

/**
 * Everything about one episode that the rules and the patient's page are made from.
 * @param newestPhotos how many of its photos are read, for an analysis is large; all of them unless told
 */
export async function readEpisodeRows(queries: Queries, id: string, newestPhotos?: number) {
  const rows = await queries.episode.findUniqueOrThrow({
    where: { id },
    include: {
      clinic: { include: { ruleBooks: { orderBy: { number: 'desc' }, take: 1 } } },
      procedure: true,
      plans: { orderBy: { number: 'desc' }, take: 1 },
      checkIns: { orderBy: { receivedAt: 'asc' } },
      photos: {
        orderBy: { receivedAt: 'desc' },
        take: newestPhotos,
        include: {
          analyses: { orderBy: { finishedAt: 'desc' }, take: 1 },
          outlines: { orderBy: { number: 'desc' } },
          job: { select: { state: true } },
        },
      },
      resolutions: { orderBy: { at: 'asc' } },
      messages: { orderBy: { at: 'desc' } },
    },
  });
  return { ...rows, photos: rows.photos.reverse() };
}

export type EpisodeRows = Awaited<ReturnType<typeof readEpisodeRows>>;
