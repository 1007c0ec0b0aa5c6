import { readClinicFacts } from '../edges/db/read-clinic-facts';
import { staffSession } from './staff-session';
import { store } from './store';

export interface StaffHere {
  readonly name: string;
  readonly role: string;
  readonly clinicName: string;
}

/** Who is signed in on this machine, for the head of the page; null where nobody of the staff is. */
export async function staffHere(headers: Headers): Promise<StaffHere | null> {
  const session = await staffSession(headers);
  if (session === null) return null;
  const { name: clinicName } = await readClinicFacts((await store()).database, session.clinicId);
  return { name: session.name, role: session.role, clinicName };
}
