/**
 * The whole matrix: every route of the program is asked by everybody, and nothing is answered to whom it does not
 * belong. A route that is added without a line here fails the first test.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keepPhotoRow } from '../../lib/edges/db/keep-photo-row';
import { finishJob } from '../../lib/edges/db/finish-job';
import { viewPath } from '../../lib/edges/files/photo-path';
import { loadPhotoView } from '../../lib/server/load-photo-view';
import { closeStore } from '../../lib/server/store';
import { STAFF_ROLES, type StaffMember, type StaffRole } from '../../lib/access/actor';
import { readText, ROOT, treeFiles } from '../architecture/source-tree';
import { MADE_AT, type TestDatabase, testClinic, testDatabase, testEpisode } from '../edges/db/test-database';
import { hashSecret, newSecret } from '../../lib/edges/session/secret';
import { allHandlers, asksGuardFirst, handlersOf } from './route-list';
import { signedIn } from './signed-in';

const CLIENT_ID = '7f1e6a52-6b52-4a4d-9d4e-0c7c7b1d5a01';
const SHA256 = 'a'.repeat(64);
const ORIGIN = 'http://clinic.test';

describe('every route', () => {
  it('is known to this test', () => {
    const listed = allHandlers().map(({ file, method }) => `${method} /${file.replace(/^app\//, '').replace(/\/route\.ts$/, '')}`);
    expect(listed.sort()).toEqual(Object.keys(ROUTES).sort());
  });

  it('answers through serve and one guarded function', () => {
    const loose = allHandlers().filter(({ served, calls }) => !served || calls.length !== 1);
    expect(loose).toEqual([]);
  });

  it('has a function that asks the guard first', () => {
    const functions = treeFiles('lib/server').filter((file) => /\/(load|command)-[a-z-]+\.ts$/.test(file));
    expect(functions.length).toBeGreaterThan(5);
    expect(functions.filter((file) => !asksGuardFirst(file, readText(file)))).toEqual([]);
  });

  it('would be caught without either', () => {
    expect(handlersOf('app/api/a/route.ts', 'export const GET = () => new Response("hello");')).toMatchObject([{ served: false, calls: [] }]);
    const late = 'export async function loadAll(actor) { const rows = await readAll(); const may = guard(actor, "a", null); if (!may.allowed) return refusedBy(may); }';
    expect(asksGuardFirst('lib/server/load-all.ts', late)).toBe(false);
    expect(asksGuardFirst('lib/server/load-all.ts', 'export async function loadAll() { return answer(1); }')).toBe(false);
  });

  it('leaves the uploads to themselves: no proxy stands before them', () => {
    const [, matcher] = /matcher: \['(.*)'\]/.exec(readText('proxy.ts')) ?? [];
    const matches = (address: string) => new RegExp(`^${matcher.replaceAll('\\\\', '\\')}$`).test(address);
    expect(matches('/today')).toBe(true);
    expect(matches('/')).toBe(true);
    expect(matches(`/api/patient/check-ins/${CLIENT_ID}/photo`)).toBe(false);
    expect(matches('/p/secret')).toBe(false);
  });
});

/** Method and place of each route, how it is asked, and what each kind of visitor is answered. */
interface Asked {
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  readonly status: Readonly<Record<Visitor, number>>;
}
type Patient = 'owner' | 'other' | 'otherClinic' | 'owing' | 'endedLink';
type Staff = StaffRole | 'otherNurse';
type Visitor = 'anonymous' | Patient | Staff;

const PATIENTS: readonly Patient[] = ['owner', 'other', 'otherClinic', 'owing', 'endedLink'];
const STAFF: readonly Staff[] = [...STAFF_ROLES, 'otherNurse'];
const VISITORS: readonly Visitor[] = ['anonymous', ...PATIENTS, ...STAFF];

const each = (status: number) => Object.fromEntries(VISITORS.map((visitor) => [visitor, status])) as Record<Visitor, number>;
/** Who is not signed in is told so; for everybody else it does not exist. An ended link signs nobody in. */
const nobody: Record<Visitor, number> = { ...each(404), anonymous: 401, endedLink: 401 };
/** Routes that name no episode act on the visitor's own: others ask them and reach nothing but what is theirs. */
const patients = (status: number, owing = 403): Record<Visitor, number> => ({ ...nobody, owner: status, other: status, otherClinic: status, owing });
const lookingAfter = (status: number): Record<Visitor, number> => ({ ...nobody, nurse: status, clinician: status, lead: status });

const photoHeaders = { 'x-photo-sha256': SHA256, 'x-photo-length': '10', 'x-photo-kind': 'toe' };

const ROUTES: Readonly<Record<string, Asked>> = {
  'GET /api/health': { status: each(200) },
  'GET /p/[token]': { status: each(303) },
  'GET /api/patient/state': { status: patients(200) },
  // The test episode's days are long over: nothing is left to put into a calendar.
  'GET /api/patient/calendar': { status: patients(204) },
  'POST /api/patient/birth-year': { body: { birthYear: 1900 }, status: patients(403) },
  'PUT /api/patient/check-ins/[clientId]': { body: { kind: 'daily', at: '2026-03-02T09:00:00Z', answers: { pain: 1 }, hasPhoto: false }, status: patients(200) },
  'PUT /api/patient/check-ins/[clientId]/photo': { body: 'short', headers: photoHeaders, status: patients(200) },
  'GET /api/patient/check-ins/[clientId]/photo': { headers: photoHeaders, status: patients(200) },
  // The check-in is the owner's; for others it does not exist.
  'GET /api/patient/check-ins/[clientId]/photo/verdict': { status: { ...patients(404), owner: 200 } },
  'GET /api/photos/[photoId]': { status: { ...lookingAfter(200), owner: 200 } },
  'GET /api/episodes/[caseCode]/csv': { status: lookingAfter(200) },
  'GET /api/episodes/[caseCode]/report': { status: lookingAfter(200) },
  'GET /api/episodes/[caseCode]/fhir': { status: lookingAfter(200) },
  // The list is that of the asking nurse's own clinic.
  'GET /api/staff/review': { status: { ...lookingAfter(200), otherNurse: 200 } },
  'GET /api/staff/review/[episodeId]': { status: lookingAfter(200) },
  'POST /api/staff/review/[episodeId]/claim': { body: { step: 'takeOver' }, status: lookingAfter(200) },
  // An empty word: who may not say one is not even told that it is empty.
  'POST /api/staff/review/[episodeId]/resolve': { body: {}, status: lookingAfter(400) },
  // A new episode belongs to the clinic of whoever starts it; an empty one is refused after the guard.
  'POST /api/staff/episodes': { body: {}, status: { ...lookingAfter(400), otherNurse: 400 } },
  'POST /api/staff/episodes/[episodeId]/cards': { body: {}, status: lookingAfter(400) },
  'POST /api/staff/episodes/[episodeId]/link': { body: {}, status: lookingAfter(400) },
  'POST /api/staff/episodes/[episodeId]/sheet': { body: {}, status: lookingAfter(400) },
  'PUT /api/staff/episodes/[episodeId]/photos/[kind]': { body: 'short', headers: { 'x-photo-sha256': SHA256 }, status: lookingAfter(400) },
  // A clinician draws outlines anew; this photo has no map to draw on.
  'POST /api/staff/photos/[photoId]/snap': { body: { outline: 'raw', points: null }, status: { ...nobody, clinician: 409, lead: 409 } },
  'POST /api/staff/photos/[photoId]/outlines': { body: { outline: 'raw', points: null, reason: 'as seen', from: 0 }, status: { ...nobody, clinician: 409, lead: 409 } },
  // A clinician closes a case; an empty word is refused after the guard.
  'POST /api/staff/episodes/[episodeId]/closing': { body: {}, status: { ...nobody, clinician: 400, lead: 400 } },
  // A lead changes the plans and the rule book of the clinic; an empty change is refused after the guard.
  'POST /api/staff/plans': { body: {}, status: { ...nobody, lead: 400 } },
  'POST /api/staff/rule-books': { body: {}, status: { ...nobody, lead: 400 } },
  'POST /api/staff/clinic': { body: {}, status: { ...nobody, lead: 400, admin: 400 } },
  'POST /api/staff/people': { body: {}, status: { ...nobody, admin: 400 } },
  'POST /api/staff/second-factor': { body: {}, status: { ...nobody, ...Object.fromEntries(STAFF.map((one) => [one, 400])) } },
  'POST /api/staff/password': { body: {}, status: { ...nobody, ...Object.fromEntries(STAFF.map((one) => [one, 400])) } },
  'POST /api/staff/join': { body: {}, status: each(400) },
  'POST /api/staff/sign-in': { body: {}, status: each(400) },
  'POST /api/staff/sign-out': { status: { ...nobody, ...Object.fromEntries(STAFF.map((one) => [one, 204])) } },
  'POST /api/patient/leave': { status: patients(204, 204) },
};

let test: TestDatabase;
let photoId: string;
let episodeId: string;
const clinics: string[] = [];
const cookies = new Map<Visitor, string>();
const signIns = new Map<Visitor, () => Promise<string>>();

type Handler = (request: Request, place: { params: Promise<Record<string, string>> }) => Promise<Response>;
async function ask(route: string, { cookie, origin = ORIGIN, token = newSecret() }: { cookie?: string; origin?: string | null; token?: string } = {}): Promise<Response> {
  const [method, place] = route.split(' ');
  const { body, headers } = ROUTES[route];
  const { [method]: handler } = (await import(/* @vite-ignore */ path.join(ROOT, 'app', place, 'route.ts'))) as Record<string, Handler>;
  const params = { clientId: CLIENT_ID, photoId, token, episodeId, caseCode: 'one', kind: 'before' };
  const address = place.replace(/\[(\w+)\]/g, (_, name: keyof typeof params) => params[name]);
  const sent = body === undefined ? undefined : typeof body === 'string' ? body : JSON.stringify(body);
  const all = { host: 'clinic.test', ...headers, ...(cookie ? { cookie } : {}), ...(origin ? { origin } : {}) };
  return handler(new Request(`${ORIGIN}${address}`, { method, body: sent, headers: all }), { params: Promise.resolve(params) });
}

async function openLink(secret: string): Promise<string> {
  const response = await ask('GET /p/[token]', { token: secret });
  return (response.headers.get('set-cookie') ?? '').split(';')[0];
}

beforeAll(async () => {
  test = await testDatabase();
  process.env.FOLDWATCH_DATA = test.folder;
  const { database } = test;
  clinics.push(await testClinic(database), await testClinic(database, { name: 'Other Clinic' }), await testClinic(database, { name: 'Asking Clinic', asksBirthYear: true }));
  const secrets = { owner: newSecret(), other: newSecret(), otherClinic: newSecret(), owing: newSecret(), endedLink: newSecret() };
  const begin = (caseCode: string, clinic: number, secret: string, more = {}) =>
    testEpisode(database, clinics[clinic], caseCode, { linkTokenHash: hashSecret(secret) ?? '', ...more });
  episodeId = await begin('one', 0, secrets.owner);
  await begin('two', 0, secrets.other);
  await begin('three', 1, secrets.otherClinic);
  await begin('four', 2, secrets.owing, { birthYear: 1980 });
  const ended = await begin('five', 0, secrets.endedLink);
  for (const [visitor, secret] of Object.entries(secrets)) signIns.set(visitor as Patient, () => openLink(secret));
  for (const role of STAFF_ROLES) signIns.set(role, await employed(role, clinics[0], role));
  signIns.set('otherNurse', await employed('nurse', clinics[1], 'otherNurse'));
  await signEverybodyIn();
  // It opened once, and then it ended; the session that it gave ends with it.
  signIns.delete('endedLink');
  await database.episode.update({ where: { id: ended }, data: { linkEndsAt: MADE_AT } });
  photoId = await photoWithView(episodeId);
});
afterAll(async () => {
  await closeStore();
  await test.close();
});

/** How somebody of the staff gets a session, without the typing of a password. */
async function employed(role: StaffRole, clinicId: string, name: string): Promise<() => Promise<string>> {
  const { database } = test;
  await database.staff.create({ data: { id: name, clinicId, name, email: `${name}@example.org`, role, active: true, madeAt: MADE_AT } });
  return () => signedIn(name);
}

async function signEverybodyIn(): Promise<void> {
  for (const [visitor, signIn] of signIns) cookies.set(visitor, await signIn());
}

async function photoWithView(episodeId: string): Promise<string> {
  const { database, folder } = test;
  const photo = { episodeId, clientId: CLIENT_ID, sha256: 'b'.repeat(64), kind: 'toe', lengthBytes: 3 };
  await database.$transaction((queries) => keepPhotoRow(queries, photo, MADE_AT));
  const { id } = await database.photo.findFirstOrThrow({ where: { episodeId } });
  const words = { methodVersion: 'test', outcome: 'measured', gates: [], json: null, viewSha256: 'c'.repeat(64), findings: [] } as const;
  await finishJob(database, { id, episodeId }, words, MADE_AT);
  const view = viewPath(path.join(folder, 'photos'), { episodeId, sha256: 'c'.repeat(64) });
  mkdirSync(path.dirname(view), { recursive: true });
  writeFileSync(view, 'jpeg');
  return id;
}

describe.each(Object.keys(ROUTES))('%s', (route) => {
  // The route before may have ended what it was asked with.
  beforeAll(signEverybodyIn);

  it.each(VISITORS)('answers %s as it must', async (visitor) => {
    const response = await ask(route, { cookie: cookies.get(visitor) });
    expect(response.status).toBe(ROUTES[route].status[visitor]);
    expect(response.headers.get('cache-control')).toBe('private, no-store');
    expect(response.headers.get('x-content-type-options')).toBe('nosniff');
  });

  it.skipIf(route.startsWith('GET '))('is refused where nobody vouches for where it comes from', async () => {
    for (const origin of [null, 'null', 'http://elsewhere.test', 'https://clinic.test.elsewhere.test', 'http://clinic.test:8080']) {
      expect((await ask(route, { cookie: cookies.get('owner'), origin })).status).toBe(403);
    }
  });
});

describe('a photo', () => {
  const staff = (role: StaffMember['role'], clinicId: string): StaffMember => ({ role, staffId: 's', clinicId });

  it('is shown to the staff of its clinic who look after people, and each look is noted', async () => {
    const before = await test.database.auditEvent.count({ where: { action: 'photo.view' } });
    const answers = await Promise.all(STAFF_ROLES.map((role) => loadPhotoView(staff(role, clinics[0]), photoId)));
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200, 404]);
    expect(await test.database.auditEvent.count({ where: { action: 'photo.view' } })).toBe(before + 3);
  });

  it('does not exist for the staff of another clinic', async () => {
    const answers = await Promise.all(STAFF_ROLES.map((role) => loadPhotoView(staff(role, clinics[1]), photoId)));
    expect(answers.map(({ status }) => status)).toEqual([404, 404, 404, 404]);
  });
});

describe('a personal link', () => {
  it('leads to an address without its secret, with a cookie that scripts cannot read', async () => {
    const secret = newSecret();
    await testEpisode(test.database, clinics[0], 'six', { linkTokenHash: hashSecret(secret) ?? '' });
    const response = await ask('GET /p/[token]', { token: secret });
    expect(response.headers.get('location')).toBe('/today');
    expect(response.headers.get('referrer-policy')).toBe('no-referrer');
    expect(response.headers.get('set-cookie')).toMatch(/^foldwatch_patient=[\w-]{43}; Path=\/; HttpOnly; SameSite=Lax; Max-Age=\d+$/);
  });

  it('of nobody gives no session', async () => {
    const response = await ask('GET /p/[token]', { token: newSecret() });
    expect(response.headers.get('location')).toBe('/link-ended');
    expect(response.headers.get('set-cookie')).toBeNull();
  });

  it('is in no column of the database, and neither is the cookie', async () => {
    const dump = JSON.stringify([await test.database.episode.findMany(), await test.database.patientSession.findMany(), await test.database.staffSession.findMany()]);
    // The staff's is signed: what comes before the point is looked up.
    const secrets = [...cookies.values()].map((cookie) => cookie.split('=')[1].split('.')[0]);
    for (const secret of secrets) expect(secret.length).toBeGreaterThanOrEqual(32);
    for (const secret of secrets) expect(dump).not.toContain(secret);
  });
});

describe('the year of birth', () => {
  it('opens what the link alone does not, and cannot be guessed by trying', async () => {
    const secret = newSecret();
    await testEpisode(test.database, clinics[2], 'seven', { linkTokenHash: hashSecret(secret) ?? '', birthYear: 1980 });
    const { POST } = await import('../../app/api/patient/birth-year/route');
    const tell = (cookie: string, birthYear: number) =>
      POST(new Request(`${ORIGIN}/api/patient/birth-year`, { method: 'POST', body: JSON.stringify({ birthYear }), headers: { host: 'clinic.test', origin: ORIGIN, cookie } }));
    const cookie = await openLink(secret);
    expect((await tell(cookie, 1979)).status).toBe(403);
    expect((await tell(cookie, 1980)).status).toBe(200);
    expect((await ask('GET /api/patient/state', { cookie })).status).toBe(200);
    // A new session begins no new count.
    for (const birthYear of [1970, 1971, 1972, 1973]) expect((await tell(await openLink(secret), birthYear)).status).toBe(403);
    expect((await tell(await openLink(secret), 1980)).status).toBe(429);
  });
});
