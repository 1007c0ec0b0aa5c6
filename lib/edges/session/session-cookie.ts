import type { StaffAuth } from './staff-auth';

/** The `Set-Cookie` that begins a session, or ends it: of all that the library sets in an answer the only one that goes out. */
export async function sessionCookie(auth: StaffAuth, answered: Headers): Promise<string> {
  const { name } = (await auth.$context).authCookies.sessionToken;
  const cookie = answered.getSetCookie().findLast((one) => one.startsWith(`${name}=`));
  if (cookie === undefined) throw new Error('An answer of the sign-in library has no session in it.');
  return cookie;
}
