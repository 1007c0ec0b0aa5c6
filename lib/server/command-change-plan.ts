import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { planTemplateSchema } from '../care/plan-templates';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { addPlanTemplate, planTemplatesOf, retirePlanTemplate } from '../edges/db/plan-templates';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';

const bodySchema = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('add'), template: planTemplateSchema }),
  z.strictObject({ step: z.literal('change'), id: z.string(), template: planTemplateSchema }),
  z.strictObject({ step: z.literal('retire'), id: z.string() }),
]);

/** Adds a regimen, puts another in its place, or offers it no longer. Plans that patients have stay as they are. */
export async function commandChangePlan(actor: Actor, body: unknown): Promise<Answer> {
  const may = guard(actor, 'plans.change', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood', { sentence: sentenceOf(read.error) });
  const asked = read.data;
  const { database } = await store();
  const at = now();
  return database.$transaction(async (queries) => {
    const offered = await planTemplatesOf(queries, actor.clinicId);
    const old = asked.step === 'add' ? '' : asked.id;
    if (asked.step === 'retire' && offered.length === 1 && offered[0].id === old) return refusal(409, 'lastPlan', { sentence: 'This is the only plan. Add another first.' });
    if (asked.step !== 'retire' && offered.some(({ id, name }) => id !== old && name === asked.template.name)) return refusal(409, 'sameName', { sentence: 'Another plan has that name.' });
    if (old !== '' && !(await retirePlanTemplate(queries, actor.clinicId, old, at))) return refusal(404, 'notFound');
    const id = asked.step === 'retire' ? null : await addPlanTemplate(queries, actor.clinicId, asked.template, actorName(actor), at);
    await noteAudit(queries, { clinicId: actor.clinicId, episodeId: null, actor: actorName(actor), action: `plans.${asked.step}`, rule: may.rule, at });
    return answer({ id });
  });
}

const sentenceOf = ({ issues: [first] }: z.ZodError): string => `${String(first.path.at(-1) ?? 'The plan')}: ${first.message}.`;
