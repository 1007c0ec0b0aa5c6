/** Who is let in and out: invitations, roles, the last admin, the second factor, and the list of who did what. */
import path from 'node:path';
import { base32 } from '@better-auth/utils/base32';
import { createOTP } from '@better-auth/utils/otp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STAFF_ROLES, type StaffRole } from '../../lib/access/actor';
import { noteAudit } from '../../lib/edges/db/note-audit';
import { startStaff } from '../../lib/edges/db/start-staff';
import { hashPassword } from '../../lib/edges/session/staff-password';
import { loadAudit } from '../../lib/server/load-audit';
import { loadPeople } from '../../lib/server/load-people';
import { closeStore } from '../../lib/server/store';
import { ROOT } from '../architecture/source-tree';
import { MADE_AT, type TestDatabase, testClinic, testDatabase, testEpisode } from '../edges/db/test-database';

const ORIGIN = 'http://clinic.test';
const PASSWORD = 'correct horse battery';

let test: TestDatabase;
let clinicId: string;
let otherClinicId: string;
const ids = new Map<string, string>();
const cookies = new Map<string, string>();

type Handler = (request: Request) => Promise<Response>;
async function post(place: string, body: unknown, as = ''): Promise<Response> {
  const { POST } = (await import(/* @vite-ignore */ path.join(ROOT, 'app', 'api', 'staff', place, 'route.ts'))) as { POST: Handler };
  const cookie = cookies.get(as);
  return POST(new Request(`${ORIGIN}/api/staff/${place}`, { method: 'POST', body: JSON.stringify(body), headers: { host: 'clinic.test', origin: ORIGIN, ...(cookie ? { cookie } : {}) } }));
}
const signIn = (email: string, more: object = {}) => post('sign-in', { email, password: PASSWORD, ...more });
const cookieOf = (response: Response) => (response.headers.get('set-cookie') ?? '').split(';')[0];
/** With another level of trust comes another session. */
const keepCookie = (who: string, response: Response) => cookies.set(who, cookieOf(response));
const people = (body: object, as = 'admin') => post('people', body, as);
const invite = async (email: string, role: StaffRole = 'nurse') => {
  const response = await people({ step: 'invite', name: 'New Person', email, role });
  return ((await response.json()) as { address: string }).address.split('#')[1];
};
const as = (role: StaffRole, clinic = clinicId) => ({ role, staffId: ids.get(role) ?? '', clinicId: clinic });

beforeAll(async () => {
  test = await testDatabase();
  process.env.FOLDWATCH_DATA = test.folder;
  const { database } = test;
  clinicId = await testClinic(database);
  otherClinicId = await testClinic(database, { name: 'Other Clinic' });
  const passwordHash = await hashPassword(PASSWORD);
  for (const role of STAFF_ROLES) ids.set(role, await startStaff(database, { name: `The ${role}`, role, email: `${role}@clinic.test`, clinicId, passwordHash }, new Date()));
  ids.set('stranger', await startStaff(database, { name: 'Stranger', role: 'admin', email: 'stranger@clinic.test', clinicId: otherClinicId, passwordHash }, new Date()));
  for (const name of [...STAFF_ROLES, 'stranger']) cookies.set(name, cookieOf(await signIn(`${name}@clinic.test`)));
});
afterAll(async () => {
  await closeStore();
  await test.close();
});

describe('an invitation', () => {
  it('lets one person in, once, with a password of their own, and is kept as a hash', async () => {
    const secret = await invite('New.Nurse@clinic.test');
    expect(JSON.stringify(await test.database.staffInvitation.findMany())).not.toContain(secret);
    expect((await post('join', { secret, password: 'short' })).status).toBe(400);
    const answers = await Promise.all([1, 2].map(() => post('join', { secret, password: PASSWORD })));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 410]);
    expect((await signIn('new.nurse@clinic.test')).status).toBe(200);
    expect(await test.database.staff.findUnique({ where: { email: 'new.nurse@clinic.test' } })).toMatchObject({ clinicId, role: 'nurse', active: true });
  });

  it('ends after a week, and cannot be guessed', async () => {
    const secret = await invite('late@clinic.test');
    await test.database.staffInvitation.updateMany({ where: { email: 'late@clinic.test' }, data: { endsAt: MADE_AT } });
    expect((await post('join', { secret, password: PASSWORD })).status).toBe(410);
    expect((await post('join', { secret: 'x'.repeat(43), password: PASSWORD })).status).toBe(410);
  });

  it('is made by an admin alone, and takes nobody of another clinic over', async () => {
    for (const role of ['nurse', 'clinician', 'lead']) expect((await people({ step: 'invite', name: 'A B', email: 'a@b.test', role: 'admin' }, role)).status).toBe(404);
    const secret = await invite('stranger@clinic.test', 'nurse');
    expect((await post('join', { secret, password: PASSWORD })).status).toBe(410);
    expect(await test.database.staff.findUnique({ where: { email: 'stranger@clinic.test' } })).toMatchObject({ clinicId: otherClinicId, role: 'admin' });
  });
});

describe('a person', () => {
  it('has another role with the next request, and none after access was ended', async () => {
    const { id } = await test.database.staff.findUniqueOrThrow({ where: { email: 'new.nurse@clinic.test' } });
    keepCookie('new', await signIn('new.nurse@clinic.test'));
    expect((await post('rule-books', {}, 'new')).status).toBe(404);
    expect((await people({ step: 'role', staffId: id, role: 'lead' })).status).toBe(200);
    expect((await post('rule-books', {}, 'new')).status).toBe(400);
    expect((await people({ step: 'end', staffId: id })).status).toBe(200);
    expect((await post('rule-books', {}, 'new')).status).toBe(401);
    expect((await signIn('new.nurse@clinic.test')).status).toBe(401);
  });

  it('stays admin while nobody else is, whichever way it is tried', async () => {
    const staffId = ids.get('admin');
    for (const body of [{ step: 'end', staffId }, { step: 'role', staffId, role: 'nurse' }]) expect((await people(body)).status).toBe(409);
    const secret = await invite('admin@clinic.test', 'nurse');
    expect((await post('join', { secret, password: PASSWORD })).status).toBe(410);
    expect(await test.database.staff.findUnique({ where: { id: staffId } })).toMatchObject({ role: 'admin', active: true });
  });

  it('of another clinic does not exist', async () => {
    expect((await people({ step: 'end', staffId: ids.get('nurse') }, 'stranger')).status).toBe(404);
    expect((await people({ step: 'role', staffId: ids.get('stranger'), role: 'nurse' })).status).toBe(404);
  });

  it('is listed for an admin of the clinic alone', async () => {
    const found = await loadPeople(as('admin'));
    expect('people' in found && found.people.map(({ email }) => email)).toEqual(expect.arrayContaining(['nurse@clinic.test', 'new.nurse@clinic.test']));
    expect(JSON.stringify(found)).not.toContain('stranger');
    for (const role of ['nurse', 'clinician', 'lead'] as const) expect(await loadPeople(as(role))).toMatchObject({ refused: { status: 404 } });
  });
});

describe('a second factor', () => {
  const codeAt = (secret: string, off = 0) => createOTP(base32.decode(secret)).hotp(Math.floor(Date.now() / 30_000) + off);
  const factor = (body: object) => post('second-factor', body, 'clinician');
  let secret: string;
  let recoveryCodes: string[];
  const quietly = () => test.database.signInDelay.deleteMany();

  it('counts from its first right code on', async () => {
    ({ secret } = (await (await factor({ step: 'begin' })).json()) as { secret: string });
    expect((await signIn('clinician@clinic.test')).status).toBe(200);
    expect((await factor({ step: 'confirm', code: '000000' === (await codeAt(secret)) ? '000001' : '000000' })).status).toBe(400);
    const confirmed = await factor({ step: 'confirm', code: await codeAt(secret, -1) });
    keepCookie('clinician', confirmed);
    ({ recoveryCodes } = (await confirmed.json()) as { recoveryCodes: string[] });
    expect(recoveryCodes).toHaveLength(8);
    expect(JSON.stringify(await test.database.staffSecondFactor.findMany())).not.toContain(recoveryCodes[0].replace('-', ''));
    expect((await factor({ step: 'begin' })).status).toBe(409);
  });

  it('cannot be read from the database: its secret is sealed with a key beside it', async () => {
    const kept = await test.database.staffSecondFactor.findMany();
    expect(kept).toHaveLength(1);
    expect(kept[0].secret).toMatch(/^\$ba\$1\$[0-9a-f]+$/);
    expect(JSON.stringify(kept)).not.toContain(secret);
  });

  it('is asked for after the password, and each code opens once', async () => {
    await quietly();
    const without = await signIn('clinician@clinic.test');
    expect([without.status, await without.json()]).toEqual([401, { problem: 'codeNeeded' }]);
    const code = await codeAt(secret);
    const wrongPassword = await post('sign-in', { email: 'clinician@clinic.test', password: 'wrong', code });
    expect(await wrongPassword.json()).toEqual({ problem: 'wrongPassword' });
    expect((await signIn('clinician@clinic.test', { code })).status).toBe(200);
    expect(await (await signIn('clinician@clinic.test', { code })).json()).toEqual({ problem: 'wrongCode' });
    await quietly();
  });

  it('takes a code from one of those who bring it at once', async () => {
    await quietly();
    const code = await codeAt(secret, 1);
    const sessions = () => test.database.staffSession.count({ where: { staffId: ids.get('clinician') } });
    const before = await sessions();
    const answers = await Promise.all([1, 2, 3].map(() => signIn('clinician@clinic.test', { code })));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 401, 401]);
    expect(await sessions()).toBe(before + 1);
  });

  it('takes no code for a quarter of an hour after ten wrong ones in a row, not even a right one', async () => {
    const staffId = ids.get('clinician') ?? '';
    await test.database.staffSecondFactor.update({ where: { staffId }, data: { failures: 9 } });
    await quietly();
    expect(await (await signIn('clinician@clinic.test', { code: 'not a code' })).json()).toEqual({ problem: 'wrongCode' });
    await quietly();
    const locked = await signIn('clinician@clinic.test', { code: recoveryCodes[7] });
    expect([locked.status, await locked.json()]).toEqual([429, { problem: 'tooManyTries', waitSeconds: 900 }]);
    await test.database.staffSecondFactor.update({ where: { staffId }, data: { lockedUntil: MADE_AT } });
    expect((await signIn('clinician@clinic.test', { code: recoveryCodes[7] })).status).toBe(200);
    expect(await test.database.staffSecondFactor.findUnique({ where: { staffId } })).toMatchObject({ failures: 0, lockedUntil: null });
    await quietly();
  });

  it('can be opened with each recovery code once, and cannot be guessed quickly', async () => {
    const [recovery] = recoveryCodes;
    expect((await signIn('clinician@clinic.test', { code: recovery.toLowerCase() })).status).toBe(200);
    expect((await signIn('clinician@clinic.test', { code: recovery })).status).toBe(401);
    const guesses = await Promise.all(Array.from({ length: 5 }, (_, at) => signIn('clinician@clinic.test', { code: `99999${at}` })));
    expect(guesses.map(({ status }) => status)).toContain(429);
    await quietly();
  });

  it('is ended by its owner with a code, not quickly guessed either, or by an admin where the phone is lost', async () => {
    const tries = await Promise.all(Array.from({ length: 5 }, (_, at) => factor({ step: 'end', code: `12345${at}` })));
    expect(new Set(tries.map(({ status }) => status))).toEqual(new Set([400, 429]));
    await quietly();
    expect((await people({ step: 'endFactor', staffId: ids.get('clinician') }, 'lead')).status).toBe(404);
    expect((await people({ step: 'endFactor', staffId: ids.get('clinician') })).status).toBe(200);
    expect((await signIn('clinician@clinic.test')).status).toBe(200);
    ({ secret } = (await (await factor({ step: 'begin' })).json()) as { secret: string });
    const confirmed = await factor({ step: 'confirm', code: await codeAt(secret) });
    keepCookie('clinician', confirmed);
    expect(await (await signIn('clinician@clinic.test')).json()).toEqual({ problem: 'codeNeeded' });
    ({ recoveryCodes } = (await confirmed.json()) as { recoveryCodes: string[] });
    expect((await factor({ step: 'end', code: recoveryCodes[0] })).status).toBe(200);
    expect((await signIn('clinician@clinic.test')).status).toBe(200);
  });
});

describe('a password of one’s own', () => {
  const NEW = 'four words in a row';
  const change = (body: object, who = 'nurse') => post('password', body, who);

  it('is changed by whoever knows the old one, and is long enough', async () => {
    await test.database.signInDelay.deleteMany();
    expect(await (await change({ old: 'not this one', password: NEW })).json()).toMatchObject({ problem: 'wrongPassword' });
    expect((await change({ old: PASSWORD, password: 'short' })).status).toBe(400);
    expect((await change({ old: PASSWORD, password: PASSWORD })).status).toBe(400);
    expect((await signIn('nurse@clinic.test')).status).toBe(200);
  });

  it('cannot be tried quickly by somebody who finds an open machine', async () => {
    await test.database.signInDelay.deleteMany();
    const tries = await Promise.all(Array.from({ length: 6 }, (_, at) => change({ old: `guess number ${at}`, password: NEW })));
    expect(tries.map(({ status }) => status)).toContain(429);
    await test.database.signInDelay.deleteMany();
  });

  it('ends every session, begins another on this machine, and is noted without a word of it', async () => {
    const before = cookies.get('nurse') ?? '';
    cookies.set('elsewhere', cookieOf(await signIn('nurse@clinic.test')));
    expect((await post('rule-books', {}, 'elsewhere')).status).toBe(404);
    const changed = await change({ old: PASSWORD, password: NEW });
    expect(changed.status).toBe(200);
    expect(await test.database.staffSession.count({ where: { staffId: ids.get('nurse') } })).toBe(1);
    expect((await post('rule-books', {}, 'elsewhere')).status).toBe(401);
    expect((await post('rule-books', {}, 'nurse')).status).toBe(401);
    keepCookie('nurse', changed);
    expect(cookies.get('nurse')).not.toBe(before);
    expect((await change({ old: PASSWORD, password: NEW })).status).toBe(403);
    expect((await signIn('nurse@clinic.test')).status).toBe(401);
    expect((await post('sign-in', { email: 'nurse@clinic.test', password: NEW })).status).toBe(200);
    const notes = await test.database.auditEvent.findMany({ where: { action: 'password.change' } });
    expect(notes).toMatchObject([{ actor: `nurse:${ids.get('nurse')}`, rule: 'nurse may password.change (clinic)' }]);
    expect(JSON.stringify(notes)).not.toContain(NEW);
  });
});

describe('the list of who did what', () => {
  it('is read a page at a time by lead and admin of the clinic, newest first, each row once', async () => {
    const episodeId = await testEpisode(test.database, clinicId, 'HF-1');
    for (let at = 0; at < 120; at += 1) await noteAudit(test.database, { clinicId, episodeId, actor: `nurse:${ids.get('nurse')}`, action: `rules.change ${at}`, rule: 'r', at: new Date(Date.UTC(2026, 0, 1, 0, 0, Math.floor(at / 3))) });
    await noteAudit(test.database, { clinicId: otherClinicId, episodeId: null, actor: 'nurse:x', action: 'rules.change elsewhere', rule: 'r', at: new Date() });
    const seen: string[] = [];
    for (let next: string | null = null, pages = 0; pages < 20; pages += 1) {
      const found = await loadAudit(as('lead'), next);
      if (!('page' in found)) throw new Error('it may not be read');
      expect(found.page.rows.length).toBeLessThanOrEqual(50);
      seen.push(...found.page.rows.map(({ action }) => action));
      if (pages === 0) expect(found.page.rows.map(({ who }) => who)).toContain('The admin, admin');
      next = found.page.next;
      if (next === null) break;
    }
    const own = seen.filter((action) => /^Changed the rule book: \d+$/.test(action));
    expect(new Set(own).size).toBe(120);
    expect(own).toHaveLength(120);
    expect(seen.join()).not.toContain('elsewhere');
    expect(await loadAudit(as('admin'), null)).toHaveProperty('page');
    for (const role of ['nurse', 'clinician'] as const) expect(await loadAudit(as(role), null)).toMatchObject({ refused: { status: 404 } });
  });

  it('names ids and roles, never an address or a name', async () => {
    const dump = JSON.stringify(await test.database.auditEvent.findMany({ where: { action: { startsWith: 'people.' } } }));
    expect(dump).toContain('people.invite nurse');
    expect(dump).not.toContain('@');
    expect(dump).not.toContain('New Person');
  });
});
