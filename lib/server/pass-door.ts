import { authRefusal } from '../edges/session/auth-refusal';
import type { StaffAuth } from '../edges/session/staff-auth';
import { takeCode } from './take-code';

export interface DoorWords {
  readonly email: string;
  readonly password: string;
  readonly code?: string;
}

/** Asks for the password and then, where there is a second factor, for its code; the library would do it in two requests. @returns the headers that begin the session */
export async function passDoor(auth: StaffAuth, { email, password, code = '' }: DoorWords): Promise<Headers | 'wrongPassword' | 'codeNeeded' | 'wrongCode' | 'locked'> {
  // Without the request's cookies: no machine is trusted without its code.
  const first = await auth.api.signInEmail({ body: { email, password }, headers: new Headers(), returnHeaders: true }).catch(authRefusal);
  if (typeof first === 'string') return 'wrongPassword';
  if (!('twoFactorRedirect' in first.response)) return first.headers;
  if (code.trim() === '') return 'codeNeeded';
  const cookie = first.headers.getSetCookie().map((one) => one.split(';')[0]).join('; ');
  return takeCode(auth, { email, typed: code }, new Headers({ cookie }));
}
