/**
 * Sign-in of the staff: passwords, sessions, second factors and their limits are the library's. It is asked by the
 * program's own routes only, behind the access table; no route of its own is mounted, and it reaches no network.
 */
import { prismaAdapter } from 'better-auth/adapters/prisma';
import { betterAuth, type BetterAuthOptions } from 'better-auth/minimal';
import { twoFactor } from 'better-auth/plugins/two-factor';
import type { Database } from '../db/open-database';
import { logEvent } from '../log/log-event';
import { RECOVERY_STORE } from './recovery-codes';
import { staffAdapter } from './staff-adapter';
import { hashPassword, isStaffPassword, LEAST_LETTERS, MOST_LETTERS } from './staff-password';

/** Over https the library puts `__Secure-` before it. */
export const STAFF_COOKIE = 'foldwatch_staff';
/** One working day: nobody is thrown out in the middle of a shift, and a forgotten machine is not open the next morning. */
const SESSION_SECONDS = 36_000;
/** Password and code come in one request. */
const CODE_SECONDS = 60;
/** After ten wrong codes in a row none is taken for so long (NIST SP 800-63B, 5.2.2). */
export const LOCK_SECONDS = 900;

export interface AuthPlace {
  readonly database: Database;
  /** Of the key file: cookies are signed with it, secrets of second factors sealed. */
  readonly key: Uint8Array;
  /** The address people type; null where it is not set. */
  readonly origin: string | null;
}

export type StaffAuth = ReturnType<typeof staffAuth>;

export function staffAuth({ database, key, origin }: AuthPlace) {
  return betterAuth({
    // Nothing is fetched from there; the library wants to know its place.
    baseURL: origin ?? 'http://localhost',
    secrets: [{ version: 1, value: Buffer.from(key).toString('base64url') }],
    telemetry: { enabled: false },
    // The message alone: what comes with it may be somebody's.
    logger: { level: 'error', log: (_, message) => logEvent('signInTrouble', { message }) },
    database: (options: BetterAuthOptions) => staffAdapter(prismaAdapter(database, { provider: 'sqlite', transaction: true })(options)),
    user: {
      modelName: 'staff',
      fields: { createdAt: 'madeAt', updatedAt: 'changedAt' },
      additionalFields: {
        clinicId: { type: 'string', required: true, input: false },
        role: { type: 'string', required: true, input: false },
        active: { type: 'boolean', required: true, input: false },
      },
    },
    account: { modelName: 'staffCredential', fields: { userId: 'staffId', accountId: 'staffId', password: 'passwordHash', createdAt: 'changedAt', updatedAt: 'changedAt' } },
    session: {
      modelName: 'staffSession',
      fields: { token: 'tokenHash', userId: 'staffId', createdAt: 'startedAt', updatedAt: 'startedAt', expiresAt: 'endsAt' },
      expiresIn: SESSION_SECONDS,
      disableSessionRefresh: true,
    },
    verification: {
      modelName: 'staffSignInStep',
      fields: { identifier: 'identifierHash', createdAt: 'madeAt', updatedAt: 'madeAt', expiresAt: 'endsAt' },
      storeIdentifier: 'hashed',
    },
    // From where somebody works, and with what, is not kept.
    databaseHooks: { session: { create: { before: async () => ({ data: { ipAddress: undefined, userAgent: undefined } }) } } },
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: LEAST_LETTERS,
      maxPasswordLength: MOST_LETTERS,
      password: { hash: hashPassword, verify: ({ hash, password }) => isStaffPassword(password, hash) },
    },
    advanced: {
      cookies: { session_token: { name: STAFF_COOKIE } },
      useSecureCookies: origin?.startsWith('https:') ?? false,
      database: { generateId: 'uuid' },
      ipAddress: { disableIpTracking: true },
    },
    plugins: [
      twoFactor({
        twoFactorCookieMaxAge: CODE_SECONDS,
        accountLockout: { durationSeconds: LOCK_SECONDS },
        backupCodeOptions: { storeBackupCodes: RECOVERY_STORE },
        schema: {
          user: { fields: { twoFactorEnabled: 'hasFactor' } },
          twoFactor: { modelName: 'staffSecondFactor', fields: { userId: 'staffId', backupCodes: 'recoveryHashes', failedVerificationCount: 'failures' } },
        },
      }),
    ],
  });
}
