import { randomBytes } from 'node:crypto';
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { startStaff } from '../../../lib/edges/db/start-staff';
import { sealFactors } from '../../../lib/edges/db/sealed-factors';
import { beginSecondFactor, findSecondFactor } from '../../../lib/edges/db/second-factors';
import { makeKeyFile, readKeyFile } from '../../../lib/edges/files/key-file';
import { readSettings } from '../../../lib/edges/env/settings';
import { isSealed, openSecret, sealSecret } from '../../../lib/edges/session/seal-secret';
import { openFactorSecret, sealFactorSecret, secondFactorKey } from '../../../lib/server/second-factor-key';
import { MADE_AT, type TestDatabase, testClinic, testDatabase } from '../db/test-database';

const SECRET = 'JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP';
const key = randomBytes(32);

describe('a sealed secret', () => {
  it('opens with its key and for its owner, and looks different each time', () => {
    const [one, other] = [sealSecret(SECRET, key, 'a'), sealSecret(SECRET, key, 'a')];
    expect(one).not.toBe(other);
    expect(one).not.toContain(SECRET);
    expect([openSecret(one, key, 'a'), openSecret(other, key, 'a')]).toEqual([SECRET, SECRET]);
  });

  it('opens with no other key, for nobody else, and not after somebody has changed it', () => {
    const sealed = sealSecret(SECRET, key, 'a');
    expect(() => openSecret(sealed, randomBytes(32), 'a')).toThrow();
    expect(() => openSecret(sealed, key, 'b')).toThrow();
    const [kind, nonce, tag, body] = sealed.split(':');
    const changed = Buffer.from(body, 'base64url');
    changed[3] ^= 1;
    expect(() => openSecret([kind, nonce, tag, changed.toString('base64url')].join(':'), key, 'a')).toThrow();
    expect(() => openSecret([kind, nonce, Buffer.from(tag, 'base64url').subarray(0, 4).toString('base64url'), body].join(':'), key, 'a')).toThrow();
  });
});

describe('the key', () => {
  let test: TestDatabase;
  let file: string;
  let staffId: string;
  const place = () => ({ database: test.database, settings: readSettings({ FOLDWATCH_DATA: test.folder }) });
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

  it('is not made anew where something was sealed with one that is gone', async () => {
    const made = await secondFactorKey(place());
    await beginSecondFactor(test.database, staffId, sealFactorSecret(SECRET, made, staffId), MADE_AT);
    rmSync(file);
    await expect(secondFactorKey(place())).rejects.toThrow(/second-factor\.key is missing.*FOLDWATCH_KEY_FILE/);
    expect(await readKeyFile(file)).toBeNull();
  });

  it('is refused by name where its file holds something else', async () => {
    writeFileSync(file, 'hello');
    await expect(secondFactorKey(place())).rejects.toThrow(/holds no key/);
  });

  it('seals what an earlier version kept as it was, and leaves nothing of it in the files', async () => {
    await beginSecondFactor(test.database, staffId, SECRET, MADE_AT);
    const made = await secondFactorKey(place());
    expect(openFactorSecret((await findSecondFactor(test.database, staffId))?.secret ?? '', made, staffId)).toBe(SECRET);
    const seal = (secret: string, owner: string) => sealFactorSecret(secret, made, owner);
    expect([await sealFactors(test.database, seal), await sealFactors(test.database, seal)]).toEqual([1, 0]);
    const kept = (await findSecondFactor(test.database, staffId))?.secret ?? '';
    expect(isSealed(kept)).toBe(true);
    expect(openFactorSecret(kept, made, staffId)).toBe(SECRET);
    await test.database.$disconnect();
    expect(readFileSync(test.file).includes(SECRET)).toBe(false);
  });
});
