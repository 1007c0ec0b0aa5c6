/** For a lost phone: each opens once in the place of a code. Of each only the hash is kept. */
import { createHash, randomBytes } from 'node:crypto';
import { toBase32 } from './one-time-code';

const HOW_MANY = 8;
const BYTES = 10;

/** `ABCDEFGH-IJKLMNOP`: 80 random bits each. */
export const newRecoveryCodes = (): string[] => Array.from({ length: HOW_MANY }, () => toBase32(randomBytes(BYTES)).replace(/^(.{8})/, '$1-'));

/** As it is kept, whatever case and hyphens somebody types. */
export const hashRecoveryCode = (code: string): string => createHash('sha256').update(code.toUpperCase().replace(/[^A-Z2-7]/g, '')).digest('hex');
