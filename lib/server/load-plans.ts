import { DateTime } from 'luxon';
import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import type { PlanTemplate } from '../care/plan-templates';
import { planTemplatesOf } from '../edges/db/plan-templates';
import { readClinicFacts } from '../edges/db/read-clinic-facts';
import { staffNames } from '../edges/db/staff-names';
import { planWords } from '../report/procedure-words';
import { type Answer, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { sayWho } from './say-who';
import { store } from './store';

export interface PlansPage {
  readonly mayChange: boolean;
  readonly plans: readonly (PlanTemplate & { readonly id: string; readonly words: string; readonly made: string })[];
}

/** The regimens that the clinic offers. */
export async function loadPlans(actor: Actor): Promise<{ readonly page: PlansPage } | { readonly refused: Answer }> {
  const { database } = await store();
  const own = findOwnClinic(actor);
  const may = guard(actor, 'plans.read', own);
  if (!may.allowed || own === null) return { refused: may.allowed ? { status: 404 } : refusedBy(may) };
  const { timeZone } = await readClinicFacts(database, own.clinicId);
  const names = await staffNames(database, own.clinicId);
  const plans = await planTemplatesOf(database, own.clinicId);
  return {
    page: {
      mayChange: guard(actor, 'plans.change', own).allowed,
      plans: plans.map(({ id, name, plan, madeAt, madeBy }) => ({
        id,
        name,
        plan,
        words: `first dressing ${plan.dressingStaysHours} h, ${planWords(plan)}, asked about after ${plan.graceHours} h more${plan.coverBetweenSoaks ? ', covered between soaks' : ', open to the air between soaks'}`,
        made: `${DateTime.fromJSDate(madeAt, { zone: timeZone }).toFormat('d LLL yyyy')}, ${madeBy === 'program' ? 'came with the program' : sayWho(madeBy, names)}`,
      })),
    },
  };
}
