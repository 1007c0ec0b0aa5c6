import type { StaffMember, StaffRole } from '../access/actor';
import { STAFF_COOKIE } from '../edges/session/staff-auth';
import { authOfStore } from './auth-of-store';
import { store } from './store';

export interface StaffSession extends StaffMember {
  readonly name: string;
}

/** Who of the staff sends this, by the cookie alone; null for everybody else, and for whoever works here no longer. */
export async function staffSession(headers: Headers): Promise<StaffSession | null> {
  // Patients are let in without the staff's key.
  if (!headers.get('cookie')?.includes(`${STAFF_COOKIE}=`)) return null;
  const auth = await authOfStore(await store());
  const found = await auth.api.getSession({ headers });
  if (!found?.user.active) return null;
  const { id, clinicId, role, name } = found.user;
  return { staffId: id, clinicId, role: role as StaffRole, name };
}
