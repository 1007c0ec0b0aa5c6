import type { AuditNote } from '../../care/audit-actions';
import { newId } from './new-id';
import type { Queries } from './open-database';

export interface AuditEntry {
  readonly clinicId: string | null;
  readonly episodeId: string | null;
  readonly actor: string;
  readonly action: AuditNote;
  readonly rule: string;
  readonly at: Date;
}

/** Adds one line to the audit list; within the transaction of what it is about, where that is a change. */
export async function noteAudit(queries: Queries, entry: AuditEntry): Promise<void> {
  await queries.auditEvent.create({ data: { id: newId(), ...entry } });
}
