/** Secrets are 256 random bits. Of each only the hash is kept: who reads the database cannot use what is in it. */
import { createHash, randomBytes } from 'node:crypto';

const SECRET_FORM = /^[\w-]{43}$/;

/** A new secret, safe in an address and in a cookie. */
export const newSecret = (): string => randomBytes(32).toString('base64url');

/** How a secret is looked up; null for what was never one of ours. */
export const hashSecret = (secret: string): string | null =>
  SECRET_FORM.test(secret) ? createHash('sha256').update(secret).digest('hex') : null;
