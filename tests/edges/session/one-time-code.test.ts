import { describe, expect, it } from 'vitest';
import { codeAddress, fromBase32, newCodeSecret, oneTimeCode, stepOfCode, toBase32 } from '../../../lib/edges/session/one-time-code';

/** RFC 6238, appendix B: the seed of the SHA-1 rows, and their times and codes of eight digits. */
const SEED = Buffer.from('12345678901234567890');
const APPENDIX_B: readonly (readonly [seconds: number, code: string])[] = [
  [59, '94287082'],
  [1111111109, '07081804'],
  [1111111111, '14050471'],
  [1234567890, '89005924'],
  [2000000000, '69279037'],
  [20000000000, '65353130'],
];
/** RFC 4226, appendix D: codes of six digits for counters 0 to 9 with the same seed. */
const APPENDIX_D = ['755224', '287082', '359152', '969429', '338314', '254676', '287922', '162583', '399871', '520489'];

describe('a one-time code', () => {
  it.each(APPENDIX_B)('is that of RFC 6238, appendix B, at %i s', (seconds, code) => {
    expect(oneTimeCode(SEED, Math.floor(seconds / 30), 8)).toBe(code);
  });

  it('is that of RFC 4226, appendix D, for each counter', () => {
    expect(APPENDIX_D.map((_, counter) => oneTimeCode(SEED, counter))).toEqual(APPENDIX_D);
  });

  // RFC 4648, section 10, without padding.
  it.each([['', ''], ['f', 'MY'], ['fo', 'MZXQ'], ['foo', 'MZXW6'], ['foob', 'MZXW6YQ'], ['fooba', 'MZXW6YTB'], ['foobar', 'MZXW6YTBOI']])('has its secret in base 32: “%s” is “%s”', (text, base32) => {
    expect(toBase32(Buffer.from(text))).toBe(base32);
    expect(fromBase32(base32).toString()).toBe(text);
  });

  it('is taken one step early or late, no further off, and never twice', () => {
    const secret = toBase32(SEED);
    const [nowMs, step] = [1111111111_000, Math.floor(1111111111 / 30)];
    const codeOf = (off: number) => oneTimeCode(SEED, step + off);
    expect([-2, -1, 0, 1, 2].map((off) => stepOfCode(secret, codeOf(off), nowMs, 0))).toEqual([null, step - 1, step, step + 1, null]);
    expect(stepOfCode(secret, codeOf(0), nowMs, step)).toBeNull();
    expect(stepOfCode(secret, '', nowMs, 0)).toBeNull();
    expect(stepOfCode(secret, `${codeOf(0).slice(0, 3)} ${codeOf(0).slice(3)}`, nowMs, 0)).toBe(step);
  });

  it('has a secret of 160 bits, and an address that an app can read', () => {
    expect(fromBase32(newCodeSecret())).toHaveLength(20);
    expect(codeAddress('ABC', 'nurse@clinic.test', 'Foot & Co')).toBe('otpauth://totp/Foot%20%26%20Co:nurse%40clinic.test?secret=ABC&issuer=Foot%20%26%20Co&algorithm=SHA1&digits=6&period=30');
  });
});
