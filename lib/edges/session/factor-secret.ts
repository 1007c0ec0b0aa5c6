/** What codes are made from (RFC 6238): told once, as an authenticator app reads it, and kept sealed as the library reads it. */
import { randomBytes } from 'node:crypto';
import { base32 } from '@better-auth/utils/base32';
import { createOTP } from '@better-auth/utils/otp';
import { symmetricEncrypt } from 'better-auth/crypto';
import type { StaffAuth } from './staff-auth';

/** RFC 4226, 4 (R6): 160 bits are recommended. */
const SECRET_BYTES = 20;
const KIND = '$ba$';

/** A new secret, in base 32 without the padding that apps do not want. */
export const newFactorSecret = (): string => base32.encode(randomBytes(SECRET_BYTES), { padding: false });

/** XChaCha20-Poly1305 with the key of the key file, and the number of that key in front. */
export async function sealFactorSecret(auth: StaffAuth, secret: string): Promise<string> {
  return symmetricEncrypt({ key: (await auth.$context).secretConfig, data: `base32:${secret}` });
}

/** Is it sealed as this version seals? */
export const isFactorSealed = (kept: string): boolean => kept.startsWith(KIND);

/** What an app reads from a square code. Some apps show the plus signs that stand for spaces. */
export const factorAddress = (secret: string, account: string, issuer: string): string => createOTP(base32.decode(secret)).url(issuer, account).replaceAll('+', '%20');
