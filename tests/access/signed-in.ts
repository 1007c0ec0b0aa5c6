/** A session of the staff without the typing of a password: as the library makes one after it. */
import { makeSignature } from 'better-auth/crypto';
import { authOfStore } from '../../lib/server/auth-of-store';
import { type Store, store } from '../../lib/server/store';

/** The `Cookie` of somebody who has just signed in. */
export async function signedIn(staffId: string, open?: Store): Promise<string> {
  const { $context } = await authOfStore(open ?? (await store()));
  const { authCookies, internalAdapter, secret } = await $context;
  const { token } = await internalAdapter.createSession(staffId);
  return `${authCookies.sessionToken.name}=${encodeURIComponent(`${token}.${await makeSignature(token, secret)}`)}`;
}
