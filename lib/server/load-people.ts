import { DateTime } from 'luxon';
import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { readClinicFacts } from '../edges/db/read-clinic-facts';
import { staffPeople } from '../edges/db/staff-people';
import { type Answer, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';

export interface ShownPerson {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: string;
  readonly active: boolean;
  readonly since: string;
  readonly hasFactor: boolean;
}

/** Who works here, with which role. */
export async function loadPeople(actor: Actor): Promise<{ readonly people: readonly ShownPerson[] } | { readonly refused: Answer }> {
  const { database } = await store();
  const own = findOwnClinic(actor);
  const may = guard(actor, 'people.read', own);
  if (!may.allowed || own === null) return { refused: may.allowed ? { status: 404 } : refusedBy(may) };
  const { timeZone } = await readClinicFacts(database, own.clinicId);
  const rows = await staffPeople(database, own.clinicId);
  return { people: rows.map(({ madeAt, ...person }) => ({ ...person, since: DateTime.fromJSDate(madeAt, { zone: timeZone }).toFormat('d LLL yyyy') })) };
}
