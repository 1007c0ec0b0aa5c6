import { base32 } from '@better-auth/utils/base32';
import { createOTP } from '@better-auth/utils/otp';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { factorAddress, newFactorSecret } from '../../../lib/edges/session/factor-secret';
import { hashRecoveryCode, newRecoveryCodes, RECOVERY_STORE } from '../../../lib/edges/session/recovery-codes';

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

describe('a code of the library', () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  it.each(APPENDIX_B)('is that of RFC 6238, appendix B, at %i s', async (seconds, code) => {
    vi.useFakeTimers({ now: seconds * 1000, toFake: ['Date'] });
    expect(await createOTP(SEED, { digits: 8 }).totp()).toBe(code);
  });

  it('is that of RFC 4226, appendix D, for each counter', async () => {
    expect(await Promise.all(APPENDIX_D.map((_, counter) => createOTP(SEED).hotp(counter)))).toEqual(APPENDIX_D);
  });

  it('is right one step early or late, and no further off', async () => {
    vi.useFakeTimers({ now: 1111111111_000, toFake: ['Date'] });
    const step = Math.floor(1111111111 / 30);
    const right = await Promise.all([-2, -1, 0, 1, 2].map(async (off) => createOTP(SEED).verify(await createOTP(SEED).hotp(step + off))));
    expect(right).toEqual([false, true, true, true, false]);
  });
});

describe('a secret', () => {
  // RFC 4648, section 10, without padding.
  it.each([['', ''], ['f', 'MY'], ['fo', 'MZXQ'], ['foo', 'MZXW6'], ['foob', 'MZXW6YQ'], ['fooba', 'MZXW6YTB'], ['foobar', 'MZXW6YTBOI']])('is told in base 32: “%s” is “%s”', (text, told) => {
    expect(base32.encode(Buffer.from(text), { padding: false })).toBe(told);
  });

  it('has 160 bits, and an address that an app can read', () => {
    const secret = newFactorSecret();
    expect(base32.decode(secret)).toHaveLength(20);
    expect(factorAddress(secret, 'nurse@clinic.test', 'Foot & Co')).toBe(`otpauth://totp/Foot%20%26%20Co:nurse%40clinic.test?secret=${secret}&issuer=Foot%20%26%20Co&digits=6&period=30`);
  });
});

describe('recovery codes', () => {
  it('are eight of 80 bits, kept as hashes whatever case they are typed in, also after one was used', async () => {
    const codes = newRecoveryCodes();
    expect(new Set(codes).size).toBe(8);
    for (const code of codes) expect(code).toMatch(/^[A-Z2-7]{8}-[A-Z2-7]{8}$/);
    const kept = await RECOVERY_STORE.encrypt(JSON.stringify(codes));
    expect(JSON.parse(await RECOVERY_STORE.decrypt(kept))).toEqual(codes.map((code) => hashRecoveryCode(code.toLowerCase().replace('-', ' '))));
    expect(await RECOVERY_STORE.encrypt(kept)).toBe(kept);
  });
});
