import { ANONYMOUS, type Actor } from '../access/actor';
import { now } from '../edges/clock/now';
import { findPatientSession } from '../edges/db/patient-sessions';
import { readPatientCookie } from '../edges/session/patient-cookie';
import { hashSecret } from '../edges/session/secret';
import { store } from './store';

/** Who sends this request, by its cookies alone. */
export async function readActor(headers: Headers): Promise<Actor> {
  const tokenHash = patientTokenHash(headers);
  if (tokenHash === null) return ANONYMOUS;
  const session = await findPatientSession((await store()).database, tokenHash, now());
  return session === null ? ANONYMOUS : { role: 'patient', ...session };
}

/** How the patient's session is looked up; null without a cookie that could be one. */
export function patientTokenHash(headers: Headers): string | null {
  const secret = readPatientCookie(headers.get('cookie'));
  return secret === null ? null : hashSecret(secret);
}
