import type { Queries } from './open-database';

/** Sweeps away those that have run out; the library ends only those that somebody comes back with. */
export async function sweepStaffSessions(queries: Queries, now: Date): Promise<void> {
  await queries.staffSession.deleteMany({ where: { endsAt: { lte: now } } });
}
