import { ANONYMOUS, type Actor, type StaffMember, type StaffRole } from '../access/actor';
import { now } from '../edges/clock/now';
import { findPatientSession } from '../edges/db/patient-sessions';
import { findStaffSession } from '../edges/db/staff-sessions';
import { readPatientCookie } from '../edges/session/patient-cookie';
import { hashSecret } from '../edges/session/secret';
import { readStaffCookie } from '../edges/session/staff-cookie';
import { store } from './store';

/** On a machine on which both are signed in, the place decides as whom somebody is seen. */
export type Preferred = 'patient' | 'staff';

/** Who sends this request, by its cookies alone. */
export async function readActor(headers: Headers, preferred: Preferred = 'staff'): Promise<Actor> {
  const [first, second] = preferred === 'staff' ? [readStaff, readPatient] : [readPatient, readStaff];
  return (await first(headers)) ?? (await second(headers)) ?? ANONYMOUS;
}

async function readPatient(headers: Headers): Promise<Actor | null> {
  const tokenHash = patientTokenHash(headers);
  const session = tokenHash === null ? null : await findPatientSession((await store()).database, tokenHash, now());
  return session && { role: 'patient', ...session };
}

async function readStaff(headers: Headers): Promise<StaffMember | null> {
  const tokenHash = staffTokenHash(headers);
  const session = tokenHash === null ? null : await findStaffSession((await store()).database, tokenHash, now());
  return session && { role: session.role as StaffRole, staffId: session.staffId, clinicId: session.clinicId };
}

/** How the patient's session is looked up; null without a cookie that could be one. */
export function patientTokenHash(headers: Headers): string | null {
  const secret = readPatientCookie(headers.get('cookie'));
  return secret === null ? null : hashSecret(secret);
}

/** How a member of staff's session is looked up; null without a cookie that could be one. */
export function staffTokenHash(headers: Headers): string | null {
  const secret = readStaffCookie(headers.get('cookie'));
  return secret === null ? null : hashSecret(secret);
}
