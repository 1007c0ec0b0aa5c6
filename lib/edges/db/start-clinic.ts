import { FIRST_PLAN_TEMPLATES } from '../../care/plan-templates';
import { newId } from './new-id';
import type { Queries } from './open-database';
import { addPlanTemplate } from './plan-templates';

export interface ClinicWords {
  readonly name: string;
  readonly phone: string;
  readonly emergencyPhone: string;
  readonly openingHours: string;
  readonly timeZone: string;
  readonly language: string;
  readonly asksBirthYear: boolean;
  /** Minutes by level. */
  readonly reviewLimits: Readonly<Record<string, number>>;
}

/** With regimens to choose from at once. @returns its id */
export async function startClinic(queries: Queries, { reviewLimits, ...words }: ClinicWords, madeAt: Date): Promise<string> {
  const id = newId();
  await queries.clinic.create({ data: { id, ...words, reviewLimits: JSON.stringify(reviewLimits), madeAt } });
  for (const template of FIRST_PLAN_TEMPLATES) await addPlanTemplate(queries, id, template, 'program', madeAt);
  return id;
}
