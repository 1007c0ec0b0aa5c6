/** Passwords are kept as scrypt makes them (RFC 7914), with their costs beside them, so that the costs can rise later. */
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';

/** N = 2^15, r = 8, p = 3: one of the settings that OWASP's password storage sheet gives for scrypt. 32 MiB for each try. */
const COSTS = { N: 32_768, r: 8, p: 3 } as const;
const KEY_BYTES = 32;
const MOST_MEMORY_BYTES = 64 * 1024 * 1024;
/** NIST SP 800-63B, 5.1.1.2: length counts, rules of composition do not. */
export const LEAST_LETTERS = 12;
/** Longer ones are no words that a person types. */
export const MOST_LETTERS = 200;

const keyOf = (password: string, salt: Buffer, { N, r, p }: { N: number; r: number; p: number }): Promise<Buffer> =>
  new Promise((resolve, fail) => {
    scrypt(password.normalize('NFKC'), salt, KEY_BYTES, { N, r, p, maxmem: MOST_MEMORY_BYTES }, (error, key) => (error ? fail(error) : resolve(key)));
  });

/** `scrypt:32768:8:3:SALT:KEY` */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(16);
  const key = await keyOf(password, salt, COSTS);
  return ['scrypt', COSTS.N, COSTS.r, COSTS.p, salt.toString('base64url'), key.toString('base64url')].join(':');
}

/** Is it this password? Where there is none to compare with, the same work is done, so that the time says nothing. */
export async function isStaffPassword(password: string, kept: string | null): Promise<boolean> {
  if (password.length > MOST_LETTERS) return false;
  const [kind, N, r, p, salt, key] = (kept ?? '').split(':');
  if (kind !== 'scrypt') {
    await keyOf(password, randomBytes(16), COSTS);
    return false;
  }
  const wanted = Buffer.from(key, 'base64url');
  const got = await keyOf(password, Buffer.from(salt, 'base64url'), { N: Number(N), r: Number(r), p: Number(p) });
  return got.length === wanted.length && timingSafeEqual(got, wanted);
}
