import { now } from '../edges/clock/now';
import { findStaffSession } from '../edges/db/staff-sessions';
import { staffTokenHash } from './read-actor';
import { store } from './store';

export interface StaffHere {
  readonly name: string;
  readonly role: string;
  readonly clinicName: string;
}

/** Who is signed in on this machine, for the head of the page; null where nobody of the staff is. */
export async function staffHere(headers: Headers): Promise<StaffHere | null> {
  const tokenHash = staffTokenHash(headers);
  const session = tokenHash === null ? null : await findStaffSession((await store()).database, tokenHash, now());
  return session && { name: session.name, role: session.role, clinicName: session.clinicName };
}
