/** For a lost phone: each opens once in the place of a code. Of each only the hash is kept. */
import { createHash, randomBytes } from 'node:crypto';
import { base32 } from '@better-auth/utils/base32';

const HOW_MANY = 8;
const BYTES = 10;
const HASH_FORM = /^[0-9a-f]{64}$/;

/** `ABCDEFGH-IJKLMNOP`: 80 random bits each. */
export const newRecoveryCodes = (): string[] => Array.from({ length: HOW_MANY }, () => base32.encode(randomBytes(BYTES), { padding: false }).replace(/^(.{8})/, '$1-'));

/** As it is kept, whatever case and hyphens somebody types. */
export const hashRecoveryCode = (code: string): string => createHash('sha256').update(code.toUpperCase().replace(/[^A-Z2-7]/g, '')).digest('hex');

/** What the library writes and reads: a list of hashes. After one was used it writes what is left, which are hashes already. */
export const RECOVERY_STORE = {
  encrypt: async (list: string): Promise<string> => JSON.stringify((JSON.parse(list) as string[]).map((one) => (HASH_FORM.test(one) ? one : hashRecoveryCode(one)))),
  decrypt: async (kept: string): Promise<string> => kept,
};
