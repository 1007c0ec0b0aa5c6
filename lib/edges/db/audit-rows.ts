import type { Queries } from './open-database';

/** What was noted at a clinic, newest first, from a place in the list on; one row more than asked for says that there is more. */
export async function auditRows(queries: Queries, clinicId: string, beforeId: string | null, take: number) {
  return queries.auditEvent.findMany({
    where: { clinicId },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    ...(beforeId === null ? {} : { cursor: { id: beforeId }, skip: 1 }),
    take: take + 1,
    select: { id: true, actor: true, action: true, rule: true, at: true, episode: { select: { caseCode: true } } },
  });
}
