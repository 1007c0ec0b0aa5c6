import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { planTemplatesOf } from '../edges/db/plan-templates';
import { readClinicFacts } from '../edges/db/read-clinic-facts';
import { planWords } from '../report/procedure-words';
import { type Answer, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';

/** What the form for a new episode needs to know of the clinic. */
export interface StartForm {
  readonly language: 'en' | 'es';
  readonly timeZone: string;
  readonly asksBirthYear: boolean;
  readonly plans: readonly { readonly id: string; readonly name: string; readonly words: string }[];
}

/** The clinic's plans to choose from, and what it asks for. */
export async function loadStart(actor: Actor): Promise<{ readonly form: StartForm } | { readonly refused: Answer }> {
  const { database } = await store();
  const own = findOwnClinic(actor);
  const may = guard(actor, 'episode.start', own);
  if (!may.allowed || own === null) return { refused: may.allowed ? { status: 404 } : refusedBy(may) };
  const clinic = await readClinicFacts(database, own.clinicId);
  const plans = await planTemplatesOf(database, own.clinicId);
  return {
    form: {
      language: clinic.language === 'es' ? 'es' : 'en',
      timeZone: clinic.timeZone,
      asksBirthYear: clinic.asksBirthYear,
      plans: plans.map(({ id, name, plan }) => ({ id, name, words: planWords(plan) })),
    },
  };
}
