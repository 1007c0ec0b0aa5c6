import { staffAuth, type StaffAuth } from '../edges/session/staff-auth';
import { secondFactorKey } from './second-factor-key';
import type { Store } from './store';

const opened = new WeakMap<Store, Promise<StaffAuth>>();

/** The staff's sign-in over this database, with its key. */
export function authOfStore(open: Store): Promise<StaffAuth> {
  const known = opened.get(open);
  if (known) return known;
  const made = secondFactorKey(open).then((key) => staffAuth({ database: open.database, key, origin: open.settings.origin }));
  opened.set(open, made);
  // Once the key is back it is asked for again.
  made.catch(() => opened.delete(open));
  return made;
}
