import { createCipheriv, randomBytes } from 'node:crypto';
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { symmetricDecrypt } from 'better-auth/crypto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sealFactors } from '../../../lib/edges/db/sealed-factors';
import { beginSecondFactor } from '../../../lib/edges/db/second-factors';
import { startStaff } from '../../../lib/edges/db/start-staff';
import { readSettings } from '../../../lib/edges/env/settings';
import { makeKeyFile, readKeyFile } from '../../../lib/edges/files/key-file';
import { openEarlierSeal } from '../../../lib/edges/session/earlier-seal';
import { isFactorSealed, sealFactorSecret } from '../../../lib/edges/session/factor-secret';
import { authOfStore } from '../../../lib/server/auth-of-store';
import { secondFactorKey } from '../../../lib/server/second-factor-key';
import { staffSession } from '../../../lib/server/staff-session';
import { closeStore } from '../../../lib/server/store';
import { MADE_AT, type TestDatabase, testClinic, testDatabase } from '../db/test-database';

const SECRET = 'JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP';

/** As version 0.1.0 sealed: AES-256-GCM, bound to the owner. */
function earlierSeal(secret: string, key: Uint8Array, staffId: string): string {
  const nonce = randomBytes(12);
  const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(Buffer.from(`secondFactor ${staffId}`));
  const sealed = Buffer.concat([cipher.update(secret, 'utf8'), cipher.final()]);
  return ['gcm1', ...[nonce, cipher.getAuthTag(), sealed].map((part) => part.toString('base64url'))].join(':');
}

describe('a secret that was sealed before', () => {
  const key = randomBytes(32);
  it('opens with its key and for its owner, and not after somebody has changed it', () => {
    const sealed = earlierSeal(SECRET, key, 'a');
    expect(openEarlierSeal(sealed, key, 'a')).toBe(SECRET);
    expect(() => openEarlierSeal(sealed, randomBytes(32), 'a')).toThrow();
    expect(() => openEarlierSeal(sealed, key, 'b')).toThrow();
    const [kind, nonce, tag, body] = sealed.split(':');
    const changed = Buffer.from(body, 'base64url');
    changed[3] ^= 1;
    expect(() => openEarlierSeal([kind, nonce, tag, changed.toString('base64url')].join(':'), key, 'a')).toThrow();
    expect(() => openEarlierSeal([kind, nonce, Buffer.from(tag, 'base64url').subarray(0, 4).toString('base64url'), body].join(':'), key, 'a')).toThrow();
  });
});

describe('the key', () => {
  let test: TestDatabase;
  let file: string;
  let staffId: string;
  const place = () => ({ database: test.database, settings: readSettings({ FOLDWATCH_DATA: test.folder }) });
  const opened = async (sealed: string) => {
    const { $context } = await authOfStore(place());
    const { secretConfig } = await $context;
    return symmetricDecrypt({ key: secretConfig, data: sealed });
  };
  const kept = async () => (await test.database.staffSecondFactor.findFirstOrThrow()).secret;
  beforeEach(async () => {
    test = await testDatabase();
    file = path.join(test.folder, 'second-factor.key');
    const clinicId = await testClinic(test.database);
    staffId = await startStaff(test.database, { clinicId, name: 'Ada Reed', role: 'nurse', email: 'ada@clinic.test', passwordHash: '' }, MADE_AT);
  });
  afterEach(() => test.close());

  it('is made once, for its owner’s eyes only, and never written over', async () => {
    const made = await makeKeyFile(file);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(await makeKeyFile(file)).toEqual(made);
    expect(await secondFactorKey(place())).toEqual(made);
  });

  it('is not made anew where something was sealed with one that is gone, now or before', async () => {
    const made = await secondFactorKey(place());
    for (const sealed of [await sealFactorSecret(await authOfStore(place()), SECRET), earlierSeal(SECRET, made, staffId)]) {
      await beginSecondFactor(test.database, staffId, sealed);
      rmSync(file, { force: true });
      await expect(secondFactorKey(place())).rejects.toThrow(/second-factor\.key is missing.*FOLDWATCH_KEY_FILE/);
      expect(await readKeyFile(file)).toBeNull();
    }
  });

  it('is not asked for by whoever is none of the staff', async () => {
    process.env.FOLDWATCH_DATA = test.folder;
    await beginSecondFactor(test.database, staffId, earlierSeal(SECRET, randomBytes(32), staffId));
    expect(await staffSession(new Headers({ cookie: 'foldwatch_patient=x' }))).toBeNull();
    await expect(staffSession(new Headers({ cookie: 'foldwatch_staff=x' }))).rejects.toThrow(/second-factor\.key is missing/);
    await closeStore();
    delete process.env.FOLDWATCH_DATA;
  });

  it('is refused by name where its file holds something else', async () => {
    writeFileSync(file, 'hello');
    await expect(secondFactorKey(place())).rejects.toThrow(/holds no key/);
  });

  it('seals so that no other key opens, and differently each time', async () => {
    const auth = await authOfStore(place());
    const [one, other] = [await sealFactorSecret(auth, SECRET), await sealFactorSecret(auth, SECRET)];
    expect(one).not.toBe(other);
    expect(one).not.toContain(SECRET);
    expect(await opened(one)).toBe(`base32:${SECRET}`);
    const wrong = { keys: new Map([[1, randomBytes(32).toString('base64url')]]), currentVersion: 1 };
    await expect(symmetricDecrypt({ key: wrong, data: one })).rejects.toThrow();
    const changed = one.replace(/.$/, (last) => (last === '0' ? '1' : '0'));
    await expect(opened(changed)).rejects.toThrow();
  });

  it('seals what earlier versions kept in their ways, and leaves nothing of it in the files', async () => {
    const [auth, key] = [await authOfStore(place()), await secondFactorKey(place())];
    const seal = (earlier: string, owner: string) => sealFactorSecret(auth, openEarlierSeal(earlier, key, owner));
    for (const earlier of [SECRET, earlierSeal(SECRET, key, staffId)]) {
      await beginSecondFactor(test.database, staffId, earlier);
      expect([await sealFactors(test.database, seal), await sealFactors(test.database, seal)]).toEqual([1, 0]);
      expect(isFactorSealed(await kept())).toBe(true);
      expect(await opened(await kept())).toBe(`base32:${SECRET}`);
    }
    await test.database.$disconnect();
    expect(readFileSync(test.file).includes(SECRET)).toBe(false);
  });
});
