import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { type ClinicFacts, readClinicFacts } from '../edges/db/read-clinic-facts';
import { type Answer, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';

/** What the clinic says about itself, for whoever may change it. */
export async function loadClinic(actor: Actor): Promise<{ readonly clinic: ClinicFacts } | { readonly refused: Answer }> {
  const { database } = await store();
  const own = findOwnClinic(actor);
  const may = guard(actor, 'clinic.change', own);
  if (!may.allowed || own === null) return { refused: may.allowed ? { status: 404 } : refusedBy(may) };
  return { clinic: await readClinicFacts(database, own.clinicId) };
}
