import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { PAPER_SIZES, type Paper } from '../card/sheet-layout';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { setClinicFacts } from '../edges/db/read-clinic-facts';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';

const PHONE = /^\+?[\d ()-]{3,30}$/;
const bodySchema = z.strictObject({
  phone: z.string().trim().regex(PHONE, 'A telephone number has digits only.'),
  emergencyPhone: z.string().trim().regex(PHONE, 'An emergency number has digits only.'),
  openingHours: z.string().trim().min(3, 'When is the clinic open?').max(120),
  paper: z.enum(Object.keys(PAPER_SIZES) as [Paper, ...Paper[]]),
});

/** What stands on every sheet and patient's page: whom to call, when, and what paper lies in the printer. */
export async function commandChangeClinic(actor: Actor, body: unknown): Promise<Answer> {
  const may = guard(actor, 'clinic.change', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood', { sentence: read.error.issues[0].message });
  const { database } = await store();
  await database.$transaction(async (queries) => {
    await setClinicFacts(queries, actor.clinicId, read.data);
    await noteAudit(queries, { clinicId: actor.clinicId, episodeId: null, actor: actorName(actor), action: 'clinic.change', rule: may.rule, at: now() });
  });
  return answer({ kept: true });
}
