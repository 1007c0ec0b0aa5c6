import type { Queries } from './open-database';
import { readEpisodeRows } from './read-episode-rows';

/** Which episode of a clinic a case code names. */
export async function findEpisodeByCase(queries: Queries, clinicId: string, caseCode: string): Promise<{ episodeId: string; clinicId: string } | null> {
  const found = await queries.episode.findUnique({ where: { clinicId_caseCode: { clinicId, caseCode } }, select: { id: true } });
  return found && { episodeId: found.id, clinicId };
}

/** An episode with all that was found and done about it, and by whom. */
export async function readStory(queries: Queries, id: string) {
  const episode = await readEpisodeRows(queries, id);
  const findings = await queries.finding.findMany({ where: { episodeId: id }, orderBy: { foundAt: 'asc' } });
  const staff = await queries.staff.findMany({ where: { clinicId: episode.clinicId }, select: { id: true, name: true } });
  const closings = await queries.closing.findMany({ where: { episodeId: id }, orderBy: { at: 'asc' } });
  return { episode, findings, closings, nameOf: new Map(staff.map((one) => [one.id, one.name])) };
}

export type Story = Awaited<ReturnType<typeof readStory>>;
