/** Staff of the version before the sign-in library sign in as before: with their passwords, their apps and their recovery codes. */
import { spawnSync } from 'node:child_process';
import { createCipheriv, createHash, randomBytes } from 'node:crypto';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { base32 } from '@better-auth/utils/base32';
import { createOTP } from '@better-auth/utils/otp';
import { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { POST } from '../../../app/api/staff/sign-in/route';
import { statement } from '../../../lib/edges/db/connection';
import { migrateDatabase } from '../../../lib/edges/db/migrate-database';
import { hashPassword } from '../../../lib/edges/session/staff-password';
import { closeStore, store } from '../../../lib/server/store';
import { ROOT } from '../../architecture/source-tree';
import { MIGRATIONS } from './test-database';

const BEFORE = (folder: string) => !path.basename(folder).endsWith('_sign_in_library');
const PASSWORD = 'correct horse battery';
const RECOVERY = 'ABCDEFGH-IJKLMNOP';
const SECRET = base32.encode(randomBytes(20), { padding: false });
const folder = mkdtempSync(path.join(tmpdir(), 'foldwatch-carried-'));

function sealed(key: Uint8Array, staffId: string): string {
  const nonce = randomBytes(12);
  const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(Buffer.from(`secondFactor ${staffId}`));
  const body = Buffer.concat([cipher.update(SECRET, 'utf8'), cipher.final()]);
  return ['gcm1', ...[nonce, cipher.getAuthTag(), body].map((part) => part.toString('base64url'))].join(':');
}
const signIn = (email: string, code?: string) => POST(new Request('http://clinic.test/api/staff/sign-in', { method: 'POST', headers: { host: 'clinic.test', origin: 'http://clinic.test' }, body: JSON.stringify({ email, password: PASSWORD, code }) }));

beforeAll(async () => {
  const [earlier, file, key] = [path.join(folder, 'earlier'), path.join(folder, 'foldwatch.sqlite'), randomBytes(32)];
  cpSync(MIGRATIONS, earlier, { recursive: true, filter: BEFORE });
  await migrateDatabase(file, earlier);
  writeFileSync(path.join(folder, 'second-factor.key'), key.toString('base64url'));
  const connection = await new PrismaBetterSQLite3({ url: `file:${file}` }).connect();
  const add = (sql: string, ...values: string[]) => connection.executeRaw(statement(sql, ...values));
  const at = '2026-11-01T09:00:00.000+00:00';
  await add(`INSERT INTO Clinic VALUES ('c', 'Harbour', '1', '2', 'always', 'Europe/London', 'en', 0, '{}', '${at}', 'a4')`);
  for (const id of ['plain', 'factor', 'begun']) {
    await add(`INSERT INTO Staff VALUES (?, 'c', ?, ?, 'nurse', 1, '${at}')`, id, id, `${id}@clinic.test`);
    await add(`INSERT INTO StaffCredential VALUES (?, ?, '${at}')`, id, await hashPassword(PASSWORD));
    await add(`INSERT INTO StaffSession VALUES (?, ?, '${at}', '2126-01-01T00:00:00.000+00:00')`, `hash of ${id}`, id);
  }
  const hashes = JSON.stringify([createHash('sha256').update('ABCDEFGHIJKLMNOP').digest('hex')]);
  await add(`INSERT INTO StaffSecondFactor VALUES ('factor', ?, 1, ?, '${at}', '${at}')`, sealed(key, 'factor'), hashes);
  await add(`INSERT INTO StaffSecondFactor VALUES ('begun', ?, 0, '[]', '${at}', NULL)`, SECRET);
  await connection.dispose();
  process.env.FOLDWATCH_DATA = folder;
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', path.join(ROOT, 'lib', 'commands', 'migrate.ts')], { cwd: ROOT, env: process.env, encoding: 'utf8' });
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toContain('2 second factors were sealed');
});
afterAll(async () => {
  await closeStore();
  delete process.env.FOLDWATCH_DATA;
  rmSync(folder, { recursive: true, force: true });
});

it('asks whoever had no second factor, or had only begun one, for the password', async () => {
  for (const email of ['plain@clinic.test', 'begun@clinic.test']) expect((await signIn(email)).status).toBe(200);
});

it('asks whoever had one for a code of the same app, or for a recovery code that was handed out before', async () => {
  expect(await (await signIn('factor@clinic.test')).json()).toEqual({ problem: 'codeNeeded' });
  expect((await signIn('factor@clinic.test', await createOTP(base32.decode(SECRET)).totp())).status).toBe(200);
  expect((await signIn('factor@clinic.test', RECOVERY)).status).toBe(200);
  expect(await (await signIn('factor@clinic.test', RECOVERY)).json()).toEqual({ problem: 'wrongCode' });
});

it('has ended what was signed in', async () => {
  expect(await (await store()).database.staffSession.count({ where: { tokenHash: { startsWith: 'hash of' } } })).toBe(0);
});
