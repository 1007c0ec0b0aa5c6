import { authRefusal } from '../edges/session/auth-refusal';
import { hashRecoveryCode } from '../edges/session/recovery-codes';
import type { StaffAuth } from '../edges/session/staff-auth';

/** Longer than any code is right: its own half minute, and one before and after it. */
const REMEMBERED_MS = 120_000;
const TIMED_CODE = /^\d{6}$/;

export interface TypedCode {
  /** Whose it is. */
  readonly email: string;
  readonly typed: string;
}

/**
 * Takes a code of the authenticator app, or a recovery code, once. The library says whether it is right; that a right one
 * is not taken again within its time is asked of the same table, by a row that only one request can add.
 * @param headers with the cookie of a session, or of a password that waits for its code
 * @returns the headers of the library's answer
 */
export async function takeCode(auth: StaffAuth, { email, typed }: TypedCode, headers: Headers): Promise<Headers | 'wrongCode' | 'locked'> {
  const code = typed.replace(/\s/g, '');
  const isTimed = TIMED_CODE.test(code);
  try {
    if (isTimed && !(await isFirstUse(auth, `${email} ${code}`))) return 'wrongCode';
    const answered = isTimed
      ? await auth.api.verifyTOTP({ headers, body: { code }, returnHeaders: true })
      : await auth.api.verifyBackupCode({ headers, body: { code: hashRecoveryCode(code) }, returnHeaders: true });
    return answered.headers;
  } catch (error) {
    return authRefusal(error) === 'ACCOUNT_TEMPORARILY_LOCKED' ? 'locked' : 'wrongCode';
  }
}

async function isFirstUse(auth: StaffAuth, identifier: string): Promise<boolean> {
  const { internalAdapter } = await auth.$context;
  return internalAdapter.reserveVerificationValue({ identifier: `code ${identifier}`, value: '', expiresAt: new Date(Date.now() + REMEMBERED_MS) });
}
