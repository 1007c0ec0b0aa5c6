import type { Database } from './open-database';
import { renewOpenCase } from './open-case';

const AT_ONCE = 200;

/** Makes the row of every case on which something is open, for a database from before there were such rows. */
export async function fillOpenCases(database: Database, now: Date): Promise<void> {
  const episodes = await database.episode.findMany({ select: { id: true } });
  for (let from = 0; from < episodes.length; from += AT_ONCE) {
    await database.$transaction(async (queries) => {
      for (const { id } of episodes.slice(from, from + AT_ONCE)) await renewOpenCase(queries, id, now);
    });
  }
}
