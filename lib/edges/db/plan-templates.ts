import type { PlanTemplate } from '../../care/plan-templates';
import { newId } from './new-id';
import type { Queries } from './open-database';

export interface PlanTemplateRow extends PlanTemplate {
  readonly id: string;
  readonly madeBy: string;
  readonly madeAt: Date;
}

/** The regimens that a clinic offers now, oldest first. */
export async function planTemplatesOf(queries: Queries, clinicId: string): Promise<PlanTemplateRow[]> {
  const rows = await queries.planTemplate.findMany({ where: { clinicId, retiredAt: null }, orderBy: [{ madeAt: 'asc' }, { name: 'asc' }] });
  return rows.map(({ id, name, json, madeBy, madeAt }) => ({ id, name, plan: JSON.parse(json) as PlanTemplate['plan'], madeBy, madeAt }));
}

/** Adds one. @returns its id */
export async function addPlanTemplate(queries: Queries, clinicId: string, { name, plan }: PlanTemplate, madeBy: string, madeAt: Date): Promise<string> {
  const id = newId();
  await queries.planTemplate.create({ data: { id, clinicId, name, json: JSON.stringify(plan), madeBy, madeAt } });
  return id;
}

/** Offers it no longer; plans that were made from it stay as they are. @returns false where this clinic offers none such */
export async function retirePlanTemplate(queries: Queries, clinicId: string, id: string, retiredAt: Date): Promise<boolean> {
  return (await queries.planTemplate.updateMany({ where: { id, clinicId, retiredAt: null }, data: { retiredAt } })).count > 0;
}
