/** Secrets that have to be kept as they are lie in the database sealed: AES-256-GCM (NIST SP 800-38D), a new nonce each time, bound to whom they belong. */
import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';

const KIND = 'gcm1';
export const KEY_BYTES = 32;
const NONCE_BYTES = 12;

/** Is this one of ours? A secret in base 32 has no colon. */
export const isSealed = (kept: string): boolean => kept.startsWith(`${KIND}:`);

/** `gcm1:NONCE:TAG:SEALED`; opens only with this key and for this owner. */
export function sealSecret(secret: string, key: Uint8Array, owner: string): string {
  const nonce = randomBytes(NONCE_BYTES);
  const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(Buffer.from(owner));
  const sealed = Buffer.concat([cipher.update(secret, 'utf8'), cipher.final()]);
  return [KIND, ...[nonce, cipher.getAuthTag(), sealed].map((part) => part.toString('base64url'))].join(':');
}

/** @throws where the key is another, the owner is, or somebody has changed it */
export function openSecret(kept: string, key: Uint8Array, owner: string): string {
  const [nonce, tag, sealed] = kept.split(':').slice(1).map((part) => Buffer.from(part, 'base64url'));
  const cipher = createDecipheriv('aes-256-gcm', key, nonce, { authTagLength: 16 }).setAAD(Buffer.from(owner)).setAuthTag(tag);
  return Buffer.concat([cipher.update(sealed), cipher.final()]).toString('utf8');
}
