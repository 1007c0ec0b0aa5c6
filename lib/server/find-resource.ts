import type { Resource } from '../access/guard';
import { findEpisode } from '../edges/db/find-episode';
import type { Queries } from '../edges/db/open-database';

/** What the guard is asked about: the episode with this id, or nothing. */
export async function findResource(queries: Queries, episodeId: string): Promise<Resource | null> {
  const found = await findEpisode(queries, episodeId);
  return found && { episodeId: found.id, clinicId: found.clinicId };
}
