import type { Queries } from './open-database';

export interface EpisodeRow {
  readonly id: string;
  readonly clinicId: string;
  readonly birthYear: number | null;
}

const select = { id: true, clinicId: true, birthYear: true } as const;

export async function findEpisode(queries: Queries, id: string): Promise<EpisodeRow | null> {
  return queries.episode.findUnique({ where: { id }, select });
}

/** The episode that a personal link opens; null once the link has ended. */
export async function findEpisodeByLink(queries: Queries, linkTokenHash: string, now: Date): Promise<EpisodeRow | null> {
  return queries.episode.findUnique({ where: { linkTokenHash, linkEndsAt: { gt: now } }, select });
}
