import type { Queries } from './open-database';

/** Puts a new link in the place of the old one, which opens nothing from now on, and neither do the phones that it opened. */
export async function renewPatientLink(queries: Queries, episodeId: string, linkTokenHash: string, linkEndsAt: Date): Promise<void> {
  await queries.episode.update({ where: { id: episodeId }, data: { linkTokenHash, linkEndsAt } });
  await queries.patientSession.deleteMany({ where: { episodeId } });
}

/** Ends the link, on every phone. */
export async function endPatientLink(queries: Queries, episodeId: string, endedAt: Date): Promise<void> {
  await queries.episode.update({ where: { id: episodeId }, data: { linkEndsAt: endedAt } });
  await queries.patientSession.deleteMany({ where: { episodeId } });
}
