import { ANONYMOUS, type Actor, type StaffMember } from '../access/actor';
import { now } from '../edges/clock/now';
import { findPatientSession } from '../edges/db/patient-sessions';
import { readPatientCookie } from '../edges/session/patient-cookie';
import { hashSecret } from '../edges/session/secret';
import { staffSession } from './staff-session';
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
  const session = await staffSession(headers);
  return session && { role: session.role, staffId: session.staffId, clinicId: session.clinicId };
}

/** How the patient's session is looked up; null without a cookie that could be one. */
export function patientTokenHash(headers: Headers): string | null {
  const secret = readPatientCookie(headers.get('cookie'));
  return secret === null ? null : hashSecret(secret);
}
