/** Codes of an authenticator app: RFC 6238 over RFC 4226, SHA-1, six digits, a step of 30 s, as every such app takes for granted. */
import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';

const STEP_MS = 30_000;
const DIGITS = 6;
/** A clock may be off by one step either way (RFC 6238, 5.2). */
const STEPS_OFF = 1;
/** RFC 4226, 4 (R6): 160 bits are recommended. */
const SECRET_BYTES = 20;
/** RFC 4648, 6. */
const BASE32 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';

/** `toBase32(Buffer.from('foobar'))` → 'MZXW6YTBOI', without the padding that apps do not want. */
export function toBase32(bytes: Uint8Array): string {
  const bits = Array.from(bytes, (byte) => byte.toString(2).padStart(8, '0')).join('');
  return (bits.match(/.{1,5}/g) ?? []).map((five) => BASE32[parseInt(five.padEnd(5, '0'), 2)]).join('');
}

/** The other way round; letters that are none of base 32 are left out. */
export function fromBase32(text: string): Buffer {
  const bits = Array.from(text.toUpperCase(), (letter) => BASE32.indexOf(letter)).filter((value) => value >= 0).map((value) => value.toString(2).padStart(5, '0')).join('');
  return Buffer.from((bits.match(/.{8}/g) ?? []).map((eight) => parseInt(eight, 2)));
}

/** A new secret, in base 32. */
export const newCodeSecret = (): string => toBase32(randomBytes(SECRET_BYTES));

/** The code of one time step (RFC 4226, 5.3: dynamic truncation). */
export function oneTimeCode(secret: Uint8Array, step: number, digits = DIGITS): string {
  const counter = Buffer.alloc(8);
  counter.writeBigUInt64BE(BigInt(step));
  const hash = createHmac('sha1', secret).update(counter).digest();
  const at = hash[hash.length - 1] & 0x0f;
  return String((hash.readUInt32BE(at) & 0x7fffffff) % 10 ** digits).padStart(digits, '0');
}

/**
 * The time step of a code, where it is right now and newer than the last that was used; null otherwise.
 * @param secret in base 32
 */
export function stepOfCode(secret: string, code: string, nowMs: number, lastStep: number): number | null {
  const given = Buffer.from(code.replace(/\s/g, ''));
  const now = Math.floor(nowMs / STEP_MS);
  for (let step = now - STEPS_OFF; step <= now + STEPS_OFF; step += 1) {
    const wanted = Buffer.from(oneTimeCode(fromBase32(secret), step));
    if (step > lastStep && given.length === wanted.length && timingSafeEqual(given, wanted)) return step;
  }
  return null;
}

/** What an authenticator app reads from a square code. */
export const codeAddress = (secret: string, account: string, issuer: string): string =>
  `otpauth://totp/${encodeURIComponent(issuer)}:${encodeURIComponent(account)}?secret=${secret}&issuer=${encodeURIComponent(issuer)}&algorithm=SHA1&digits=${DIGITS}&period=${STEP_MS / 1000}`;
