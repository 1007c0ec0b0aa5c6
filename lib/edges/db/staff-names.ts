import type { Queries } from './open-database';

/** Names of everybody who works or worked at a clinic, by id. */
export async function staffNames(queries: Queries, clinicId: string): Promise<ReadonlyMap<string, string>> {
  const rows = await queries.staff.findMany({ where: { clinicId }, select: { id: true, name: true } });
  return new Map(rows.map(({ id, name }) => [id, name]));
}
