/** What staff may do and see, asked through the routes as a browser does: sign-in, the list, a case, a claim, a word on it. */
import { createHash } from 'node:crypto';
import path from 'node:path';
import { makeSignature } from 'better-auth/crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STAFF_ROLES, type StaffRole } from '../../lib/access/actor';
import { addFindings } from '../../lib/edges/db/add-finding';
import { keepCheckIn } from '../../lib/edges/db/keep-check-in';
import { startStaff } from '../../lib/edges/db/start-staff';
import { hashPassword, isStaffPassword } from '../../lib/edges/session/staff-password';
import type { Finding } from '../../lib/decide/finding';
import { authOfStore } from '../../lib/server/auth-of-store';
import type { ReviewCase } from '../../lib/server/review-case';
import type { ReviewList } from '../../lib/server/review-row';
import { closeStore, store } from '../../lib/server/store';
import { ROOT } from '../architecture/source-tree';
import { type TestDatabase, testClinic, testDatabase, testEpisode } from '../edges/db/test-database';

const ORIGIN = 'http://clinic.test';
const PASSWORD = 'correct horse battery';
const HOUR_MS = 3_600_000;

let test: TestDatabase;
const clinics: string[] = [];
const cookies = new Map<string, string>();
let episodeId: string;
let otherEpisodeId: string;

type Handler = (request: Request, place: { params: Promise<Record<string, string>> }) => Promise<Response>;
async function ask(method: string, place: string, { cookie, body, id = '', query = '' }: { cookie?: string; body?: unknown; id?: string; query?: string } = {}): Promise<Response> {
  const { [method]: handler } = (await import(/* @vite-ignore */ path.join(ROOT, 'app', 'api', 'staff', place, 'route.ts'))) as Record<string, Handler>;
  const headers = { host: 'clinic.test', origin: ORIGIN, ...(cookie ? { cookie } : {}) };
  const address = `${ORIGIN}/api/staff/${place.replace('[episodeId]', id)}${query}`;
  return handler(new Request(address, { method, headers, body: body === undefined ? undefined : JSON.stringify(body) }), { params: Promise.resolve({ episodeId: id }) });
}
const signIn = (email: string, password = PASSWORD, cookie?: string) => ask('POST', 'sign-in', { body: { email, password }, cookie });
const cookieOf = (response: Response) => (response.headers.get('set-cookie') ?? '').split(';')[0];
/** What is looked up: the part of the cookie before its signature. */
const tokenOf = (cookie: string) => cookie.split('=')[1].split('.')[0];
const listFor = async (who: string) => (await (await ask('GET', 'review', { cookie: cookies.get(who) })).json()) as ReviewList;
const caseFor = async (who: string, id: string) => (await (await ask('GET', 'review/[episodeId]', { cookie: cookies.get(who), id })).json()) as ReviewCase;
const claim = (who: string, id: string, step = 'keep') => ask('POST', 'review/[episodeId]/claim', { cookie: cookies.get(who), id, body: { step } });
const resolve = (who: string, id: string, more: object) =>
  ask('POST', 'review/[episodeId]/resolve', { cookie: cookies.get(who), id, body: { action: 'called', note: '', message: null, dryness: null, ...more } });

const foundHoursAgo = (hours: number, more: Partial<Finding> = {}): Finding => ({
  rule: 'spreading',
  level: 'today',
  at: new Date(Date.now() - hours * HOUR_MS).toISOString(),
  sentence: 'Reach grew 3.1 mm in 41 h, smallest change we can see is 1.2 mm.',
  evidence: { numbers: [], photos: [], checkIns: [] },
  ruleBookVersion: '2026.3',
  raisedForRisk: false,
  closed: null,
  ...more,
});
const find = (id: string, finding: Finding) => test.database.$transaction((queries) => addFindings(queries, id, [finding], new Date(Date.parse(finding.at))));

beforeAll(async () => {
  test = await testDatabase();
  process.env.FOLDWATCH_DATA = test.folder;
  const { database } = test;
  clinics.push(await testClinic(database), await testClinic(database, { name: 'Other Clinic' }));
  const passwordHash = await hashPassword(PASSWORD);
  const hire = (name: string, role: StaffRole, clinic = 0) => startStaff(database, { name, role, email: `${name}@clinic.test`, clinicId: clinics[clinic], passwordHash }, new Date());
  for (const role of STAFF_ROLES) await hire(role, role);
  await hire('second', 'nurse');
  await hire('stranger', 'lead', 1);
  await hire('forgetful', 'nurse');
  for (const name of [...STAFF_ROLES, 'second', 'stranger']) cookies.set(name, cookieOf(await signIn(`${name}@clinic.test`)));
  const procedureAt = new Date(Date.now() - 192 * HOUR_MS);
  episodeId = await testEpisode(database, clinics[0], 'one', { procedureAt });
  otherEpisodeId = await testEpisode(database, clinics[0], 'two', { procedureAt });
  await find(episodeId, foundHoursAgo(5));
  await find(otherEpisodeId, foundHoursAgo(9, { rule: 'late', level: 'visit', sentence: 'Not dry by day 28.' }));
});
afterAll(async () => {
  await closeStore();
  await test.close();
});

describe('signing in', () => {
  it('gives a cookie that scripts cannot read, and keeps neither it nor the password', async () => {
    const response = await signIn(' Nurse@Clinic.test ');
    expect(response.status).toBe(200);
    expect(response.headers.get('set-cookie')).toMatch(/^foldwatch_staff=[A-Za-z0-9]{32}\.[\w%]+; Max-Age=36000; Path=\/; HttpOnly; SameSite=Lax$/);
    const dump = JSON.stringify([await test.database.staffSession.findMany(), await test.database.staffCredential.findMany(), await test.database.auditEvent.findMany()]);
    expect(dump).not.toContain(tokenOf(cookieOf(response)));
    expect(dump).not.toContain(PASSWORD);
  });

  it('gives nothing to whoever has read the database, even with the key that signs', async () => {
    const cookie = cookieOf(await signIn('second@clinic.test'));
    const { $context } = await authOfStore(await store());
    const { authCookies, secret } = await $context;
    const signed = async (token: string) => `${authCookies.sessionToken.name}=${encodeURIComponent(`${token}.${await makeSignature(token, secret)}`)}`;
    expect(await signed(tokenOf(cookie))).toBe(cookie);
    expect((await ask('GET', 'review', { cookie })).status).toBe(200);
    const kept = await test.database.staffSession.findMany();
    expect(kept.map(({ tokenHash }) => tokenHash)).toContain(createHash('sha256').update(tokenOf(cookie)).digest('hex'));
    for (const { id, tokenHash } of kept) {
      for (const stolen of [id, tokenHash]) expect((await ask('GET', 'review', { cookie: await signed(stolen) })).status).toBe(401);
    }
    const [name] = cookie.split('=');
    expect((await ask('GET', 'review', { cookie: `${name}=${tokenOf(cookie)}` })).status).toBe(401);
  });

  it('answers a wrong password and an address of nobody alike', async () => {
    const answers = await Promise.all([signIn('admin@clinic.test', 'wrong'), signIn('nobody@clinic.test', 'wrong')]);
    expect(answers.map(({ status }) => status)).toEqual([401, 401]);
    expect(await answers[0].json()).toEqual(await answers[1].json());
  });

  it('makes each further try wait longer, for an address of nobody too, and lets nobody be guessed by many at once', async () => {
    for (const email of ['forgetful@clinic.test', 'nobody-else@clinic.test']) {
      const all = await Promise.all(Array.from({ length: 6 }, () => signIn(email, 'wrong')));
      const statuses = all.map(({ status }) => status);
      expect(statuses.filter((status) => status === 401)).toHaveLength(3);
      expect(statuses.filter((status) => status === 429)).toHaveLength(3);
    }
    await test.database.signInDelay.updateMany({ data: { waitUntil: new Date(Date.now() + HOUR_MS) } });
    expect((await signIn('forgetful@clinic.test')).status).toBe(429);
    await test.database.signInDelay.updateMany({ data: { waitUntil: new Date(0) } });
    expect((await signIn('forgetful@clinic.test')).status).toBe(200);
    expect(await test.database.signInDelay.count({ where: { failures: { gt: 3 } } })).toBe(0);
  });

  it('ends with signing out, and with leaving the clinic', async () => {
    const cookie = cookieOf(await signIn('second@clinic.test'));
    expect((await ask('GET', 'review', { cookie })).status).toBe(200);
    const before = await test.database.staffSession.count();
    expect((await ask('POST', 'sign-out', { cookie })).status).toBe(204);
    expect(await test.database.staffSession.count()).toBe(before - 1);
    expect((await ask('GET', 'review', { cookie })).status).toBe(401);
    const another = cookieOf(await signIn('forgetful@clinic.test'));
    await test.database.staff.update({ where: { email: 'forgetful@clinic.test' }, data: { active: false } });
    expect((await ask('GET', 'review', { cookie: another })).status).toBe(401);
    expect((await signIn('forgetful@clinic.test')).status).toBe(401);
  });

  it('ends the one that was signed in on the same machine before', async () => {
    const first = cookieOf(await signIn('second@clinic.test'));
    await signIn('nurse@clinic.test', PASSWORD, first);
    expect((await ask('GET', 'review', { cookie: first })).status).toBe(401);
  });

  it('knows a password from another, and one kept in no known way from any', async () => {
    const kept = await hashPassword('Straße 7');
    expect(await isStaffPassword('Straße 7', kept)).toBe(true);
    expect(await isStaffPassword('Strasse 7', kept)).toBe(false);
    expect(await isStaffPassword('', 'plain:')).toBe(false);
  });
});

describe('the list', () => {
  it('belongs to those who look after people at this clinic', async () => {
    const statuses = await Promise.all(STAFF_ROLES.map(async (role) => (await ask('GET', 'review', { cookie: cookies.get(role) })).status));
    expect(statuses).toEqual([200, 200, 200, 404]);
    expect((await listFor('stranger')).rows).toEqual([]);
  });

  it('says who comes first, why, and for how long', async () => {
    const { rows } = await listFor('nurse');
    expect(rows.map(({ caseCode, level }) => [caseCode, level])).toEqual([['one', 'today'], ['two', 'visit']]);
    expect(rows[0]).toMatchObject({ why: 'Reach grew 3.1 mm in 41 h, smallest change we can see is 1.2 mm.', day: 8, openWith: null, asked: null });
    expect(rows[0].wait.words).toBe('waited 5 h, no limit set');
  });

  it('answers shortly while nothing has changed, and whole when something has', async () => {
    const { stamp } = await listFor('nurse');
    const again = async () => (await (await ask('GET', 'review', { cookie: cookies.get('nurse'), query: `?since=${stamp}` })).json()) as object;
    expect(await again()).toEqual({ stamp });
    await find(episodeId, foundHoursAgo(1, { rule: 'pain-rising', level: 'soon', sentence: 'Pain is 5 of 10.' }));
    expect(await again()).toMatchObject({ rows: [{ also: ['Pain rises'] }, {}] });
  });

  it('has somebody who was silent no longer once a check-in has come', async () => {
    const id = await testEpisode(test.database, clinics[0], 'quiet', { procedureAt: new Date(Date.now() - 99 * HOUR_MS) });
    await find(id, foundHoursAgo(3, { rule: 'silent', level: 'soon', sentence: 'Nothing came for 60 h.' }));
    expect((await listFor('nurse')).rows.map(({ caseCode }) => caseCode)).toContain('quiet');
    const words = { episodeId: id, clientId: 'c', kind: 'daily', at: new Date().toISOString(), answers: '{}', worry: null, hasPhoto: false, bodySha256: 'b' };
    await test.database.$transaction((queries) => keepCheckIn(queries, words, new Date(), false));
    expect((await listFor('nurse')).rows.map(({ caseCode }) => caseCode)).not.toContain('quiet');
  });
});

describe('a case', () => {
  it('does not exist for another clinic, whatever is asked of it', async () => {
    const answers = await Promise.all([ask('GET', 'review/[episodeId]', { cookie: cookies.get('stranger'), id: episodeId }), claim('stranger', episodeId), resolve('stranger', episodeId, { seen: ['x'] })]);
    expect(answers.map(({ status }) => status)).toEqual([404, 404, 404]);
  });

  it('is noted each time somebody opens it, with who it was and what allowed it', async () => {
    await caseFor('nurse', episodeId);
    const looks = await test.database.auditEvent.findMany({ where: { episodeId, action: 'review.open' } });
    expect(looks).toMatchObject([{ clinicId: clinics[0], rule: 'nurse may review.read (clinic)' }]);
    expect(looks[0].actor).toMatch(/^nurse:/);
  });

  it('is worked on by one person at a time, who is named, until it is let go or taken over on purpose', async () => {
    expect((await claim('nurse', episodeId)).status).toBe(200);
    const named = await claim('second', episodeId);
    expect([named.status, await named.json()]).toMatchObject([409, { problem: 'claimed', by: 'nurse' }]);
    expect((await listFor('second')).rows[0].openWith).toEqual({ name: 'nurse', mine: false });
    const { seen } = await caseFor('second', episodeId);
    expect((await resolve('second', episodeId, { seen })).status).toBe(409);
    expect((await claim('second', episodeId, 'takeOver')).status).toBe(200);
    expect((await resolve('nurse', episodeId, { seen })).status).toBe(409);
    await claim('second', episodeId, 'letGo');
    expect((await claim('nurse', episodeId)).status).toBe(200);
  });

  it('is nobody’s again once a claim has lapsed', async () => {
    await test.database.reviewClaim.update({ where: { episodeId }, data: { endsAt: new Date(Date.now() - 1) } });
    expect((await listFor('nurse')).rows[0].openWith).toBeNull();
    expect((await claim('second', episodeId)).status).toBe(200);
    await claim('second', episodeId, 'letGo');
  });

  it('stays where something has come that was not on the screen', async () => {
    const { seen } = await caseFor('nurse', episodeId);
    await claim('nurse', episodeId);
    await find(episodeId, foundHoursAgo(0.5, { rule: 'purulent', level: 'today', sentence: 'Discharge is yellow and thick.' }));
    const response = await resolve('nurse', episodeId, { seen });
    expect([response.status, await response.json()]).toEqual([409, { problem: 'changed' }]);
  });

  it('stays, as asked, while a question waits for the clinician, who finds it first', async () => {
    await claim('nurse', otherEpisodeId);
    const { seen } = await caseFor('nurse', otherEpisodeId);
    expect((await resolve('nurse', otherEpisodeId, { action: 'askClinician', note: 'is this granulation?', seen })).status).toBe(200);
    const [forNurse, forClinician] = [(await listFor('nurse')).rows, (await listFor('clinician')).rows];
    expect(forNurse.at(-1)).toMatchObject({ caseCode: 'two', asked: { by: 'nurse', note: 'Asked the clinician. is this granulation?' } });
    expect(forClinician[0].caseCode).toBe('two');
  });

  it('asks for the reason where nothing is needed, and keeps it with who, what and when for every rule that was open', async () => {
    await claim('nurse', episodeId);
    const { seen } = await caseFor('nurse', episodeId);
    const empty = await resolve('nurse', episodeId, { action: 'nothingNeeded', seen });
    expect([empty.status, await empty.json()]).toEqual([400, { problem: 'notComplete', sentence: 'Why is nothing needed? A note is kept with this.' }]);
    expect((await resolve('nurse', episodeId, { action: 'nothingNeeded', note: 'seen in clinic this morning', seen })).status).toBe(200);
    const kept = await test.database.resolution.findMany({ where: { episodeId }, orderBy: { rule: 'asc' } });
    expect(kept.map(({ rule }) => rule)).toEqual(['pain-rising', 'purulent', 'spreading']);
    for (const one of kept) expect(one).toMatchObject({ action: 'nothingNeeded', reason: 'seen in clinic this morning', by: expect.stringMatching(/^nurse:/) });
    expect(await test.database.auditEvent.count({ where: { episodeId, action: 'review.resolve nothingNeeded' } })).toBe(1);
    expect((await listFor('nurse')).rows.map(({ caseCode }) => caseCode)).not.toContain('one');
  });

  it('comes back with a new finding', async () => {
    await find(episodeId, foundHoursAgo(-0.01, { sentence: 'Reach grew 4 mm.' }));
    expect((await listFor('nurse')).rows[0]).toMatchObject({ caseCode: 'one', why: 'Reach grew 4 mm.' });
  });

  it('sends the words of a message to the patient, and no note', async () => {
    await claim('nurse', episodeId);
    const { seen } = await caseFor('nurse', episodeId);
    await resolve('nurse', episodeId, { action: 'messaged', note: 'anxious on the phone', message: 'Please soak twice a day.', seen });
    const messages = await test.database.message.findMany({ where: { episodeId } });
    expect(messages.map(({ text }) => text)).toEqual(['Please soak twice a day.']);
  });
});
