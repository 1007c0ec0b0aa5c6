import { DateTime } from 'luxon';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { auditRows } from '../edges/db/audit-rows';
import { noteAudit } from '../edges/db/note-audit';
import { readClinicFacts } from '../edges/db/read-clinic-facts';
import { staffNames } from '../edges/db/staff-names';
import { type Answer, refusedBy } from './answer';
import { allowedWords, auditWords } from './audit-words';
import { findOwnClinic } from './find-own-clinic';
import { sayWho } from './say-who';
import { store } from './store';

const ROWS = 50;

export interface AuditPage {
  readonly rows: readonly { readonly id: string; readonly at: string; readonly who: string; readonly action: string; readonly caseCode: string; readonly rule: string }[];
  /** Where the next page begins; null on the last. */
  readonly next: string | null;
}

/** Who did or saw what at the clinic, a page at a time. That somebody reads it is noted too. */
export async function loadAudit(actor: Actor, beforeId: string | null): Promise<{ readonly page: AuditPage } | { readonly refused: Answer }> {
  const { database } = await store();
  const own = findOwnClinic(actor);
  const may = guard(actor, 'audit.read', own);
  if (!may.allowed || own === null) return { refused: may.allowed ? { status: 404 } : refusedBy(may) };
  const { clinicId } = own;
  const { timeZone } = await readClinicFacts(database, clinicId);
  const names = await staffNames(database, clinicId);
  const rows = await auditRows(database, clinicId, beforeId, ROWS);
  await noteAudit(database, { clinicId, episodeId: null, actor: actorName(actor), action: 'audit.read', rule: may.rule, at: now() });
  const shown = rows.slice(0, ROWS);
  return {
    page: {
      rows: shown.map(({ id, at, actor: who, action, rule, episode }) => ({
        id,
        at: DateTime.fromJSDate(at, { zone: timeZone }).toFormat('d LLL yyyy, HH:mm:ss'),
        who: sayWho(who, names),
        action: auditWords(action, names),
        caseCode: episode?.caseCode ?? '',
        rule: allowedWords(rule),
      })),
      next: rows.length > ROWS ? shown[shown.length - 1].id : null,
    },
  };
}
