/** Signing off: who may, what it takes, what it does to list, link and patient's page, and opening the case again. */
import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Actor } from '../../lib/access/actor';
import type { Finding } from '../../lib/decide/finding';
import { addFindings } from '../../lib/edges/db/add-finding';
import { startStaff } from '../../lib/edges/db/start-staff';
import { loadEpisode } from '../../lib/server/load-episode';
import type { EpisodePage } from '../../lib/server/shown-episode';
import type { ReviewList } from '../../lib/server/review-row';
import { closeStore } from '../../lib/server/store';
import { workOnAssessment } from '../../lib/server/work-on-assessment';
import { store } from '../../lib/server/store';
import { ROOT } from '../architecture/source-tree';
import { openLink } from '../journey/routes-in-process';
import { ORIGIN, testClinic, type TestClinic, type TestPatient } from '../journey/test-clinic';
import { signedIn } from './signed-in';

type Handler = (request: Request, place: { params: Promise<Record<string, string>> }) => Promise<Response>;
const DAY_MS = 86_400_000;

let clinic: TestClinic;
let toe: TestPatient;
let send: Awaited<ReturnType<typeof openLink>>;
const staff = new Map<string, { cookie: string; actor: Actor }>();

async function ask(who: string, method: string, place: string, body?: unknown): Promise<Response> {
  const { [method]: handler } = (await import(/* @vite-ignore */ path.join(ROOT, 'app', 'api', 'staff', place, 'route.ts'))) as Record<string, Handler>;
  const headers = { host: 'clinic.test', origin: ORIGIN, cookie: staff.get(who)?.cookie ?? '' };
  const request = new Request(`${ORIGIN}/api/staff/${place}`, { method, headers, body: body === undefined ? undefined : JSON.stringify(body) });
  return handler(request, { params: Promise.resolve({ episodeId: toe.episodeId }) });
}
const change = (who: string, body: unknown) => ask(who, 'POST', 'episodes/[episodeId]/closing', body);
const sentenceOf = async (response: Response) => ((await response.json()) as { sentence?: string }).sentence;
const onList = async () => ((await (await ask('nurse', 'GET', 'review')).json()) as ReviewList).rows.map(({ caseCode, why }) => `${caseCode}: ${why}`);
async function page(who = 'clinician'): Promise<EpisodePage> {
  const found = await loadEpisode(staff.get(who)?.actor ?? { role: 'anonymous' }, 'SO-1');
  if ('refused' in found) throw new Error(`The page was refused with ${found.refused.status}.`);
  return found.page;
}
const find = (more: Partial<Finding>) =>
  clinic.database.$transaction((queries) =>
    addFindings(queries, toe.episodeId, [{ rule: 'spike-suspect', level: 'visit', at: new Date(Date.now() - DAY_MS).toISOString(), sentence: 'A spike was recorded.', evidence: { numbers: [], photos: [], checkIns: [] }, ruleBookVersion: '2026.3', raisedForRisk: false, closed: null, ...more }], new Date()),
  );
async function settleRules(): Promise<void> {
  while (await workOnAssessment(await store())) {
    // until none is due
  }
}

beforeAll(async () => {
  clinic = await testClinic();
  process.env.FOLDWATCH_DATA = clinic.folder;
  toe = await clinic.patient('SO-1', 20);
  for (const role of ['nurse', 'clinician'] as const) {
    const staffId = await startStaff(clinic.database, { name: role === 'nurse' ? 'Ada Reed' : 'Ruth Okonjo', role, email: `${role}@clinic.test`, clinicId: clinic.clinicId, passwordHash: '' }, new Date());
    staff.set(role, { cookie: await signedIn(staffId), actor: { role, staffId, clinicId: clinic.clinicId } });
  }
  send = await openLink(toe.secret);
  await settleRules();
  await find({});
});
afterAll(async () => {
  await closeStore();
  delete process.env.FOLDWATCH_DATA;
  await clinic.close();
});

it('is a clinician’s: a nurse is not even told that the case is there to be closed', async () => {
  expect((await change('nurse', { step: 'close', found: 'dry', answers: [], seen: [] })).status).toBe(404);
  expect((await page('nurse')).closing.mayClose).toBe(false);
});

it('takes words on what was found and on every open finding, and on none that was not seen', async () => {
  const { open, seen } = (await page()).closing;
  expect(open.map(({ rule }) => rule)).toEqual(expect.arrayContaining(['spike-suspect', 'silent']));
  const settled = open.map(({ rule }) => ({ rule, step: 'settled', note: 'seen at the visit' }));
  expect(await sentenceOf(await change('clinician', { step: 'close', found: ' ', answers: settled, seen }))).toBe('What was found at the follow-up? It is kept with the case.');
  expect(await sentenceOf(await change('clinician', { step: 'close', found: 'dry groove', answers: settled.slice(1), seen }))).toMatch(/is open: settled, or left open\?$/);
  expect(await sentenceOf(await change('clinician', { step: 'close', found: 'dry groove', answers: settled.map((one) => ({ ...one, note: '' })), seen }))).toMatch(/what settled it\?$/);
  expect((await change('clinician', { step: 'close', found: 'dry groove', answers: settled, seen: seen.slice(1) })).status).toBe(409);
  expect(await clinic.database.closing.count()).toBe(0);
});

it('waits while a photo is being worked on', async () => {
  const photo = { id: 'waiting', episodeId: toe.episodeId, clientId: 'c', sha256: 'a', kind: 'toe', lengthBytes: 1, receivedAt: new Date() };
  await clinic.database.photo.create({ data: photo });
  await clinic.database.job.create({ data: { photoId: 'waiting', state: 'waiting', attempts: 0, madeAt: new Date() } });
  const { open, seen } = (await page()).closing;
  const answers = open.map(({ rule }) => ({ rule, step: 'settled', note: 'seen' }));
  expect(await sentenceOf(await change('clinician', { step: 'close', found: 'dry groove', answers, seen }))).toMatch(/still being worked on/);
  await clinic.database.job.updateMany({ data: { state: 'done' } });
});

it('closes with who, when and what is left open; the case leaves the list, and the link says that it has ended', async () => {
  const { open, seen } = (await page()).closing;
  const answers = open.map(({ rule }) => ({ rule, step: rule === 'spike-suspect' ? 'leftOpen' : 'settled', note: rule === 'spike-suspect' ? 'look at the corner in six weeks, Dr Okonjo' : 'came to the visit' }));
  expect((await change('clinician', { step: 'close', found: 'Groove closed, no pain on pressure.', answers, seen })).status).toBe(200);
  await settleRules();
  const after = await page();
  expect(after.closedAt).not.toBeNull();
  expect(after.open).toEqual([]);
  expect(after.closing.record).toMatchObject([{ closed: true, by: 'Ruth Okonjo', words: 'Groove closed, no pain on pressure.', leftOpen: ['A spike of nail may be left: look at the corner in six weeks, Dr Okonjo'] }]);
  expect(await onList()).toEqual([]);
  expect(await (await send('/api/patient/state', {})).json()).toMatchObject({ closed: true, clinic: { phone: '01632 960123' } });
  const { linkEndsAt } = await clinic.database.episode.findUniqueOrThrow({ where: { id: toe.episodeId } });
  expect(linkEndsAt.getTime()).toBeLessThanOrEqual(Date.now() + 30 * DAY_MS);
  const notes = await clinic.database.auditEvent.findMany({ where: { episodeId: toe.episodeId, action: 'episode.close' } });
  expect(notes).toMatchObject([{ rule: 'clinician may episode.close (clinic)' }]);
});

it('is not closed twice', async () => {
  expect((await change('clinician', { step: 'close', found: 'dry', answers: [], seen: [] })).status).toBe(409);
});

it('keeps what a phone still sends, and puts a warning sign on the list all the same', async () => {
  const body = { kind: 'daily', at: new Date().toISOString(), answers: { pain: 8, streaks: true }, hasPhoto: false };
  const receipt = await send('/api/patient/check-ins/7f1e6a52-6b52-4a4d-9d4e-0c7c7b1d5a01', { method: 'PUT', body: JSON.stringify(body) });
  expect(await receipt.json()).toMatchObject({ callNow: true });
  expect(await onList()).toEqual([expect.stringMatching(/^SO-1: .*streak/i)]);
});

it('is opened again with a reason, and both stay on record', async () => {
  expect((await change('clinician', { step: 'reopen', reason: ' ' })).status).toBe(400);
  expect((await change('nurse', { step: 'reopen', reason: 'red streak' })).status).toBe(404);
  expect((await change('clinician', { step: 'reopen', reason: 'Red streak since this morning.' })).status).toBe(200);
  const after = await page();
  expect(after.closedAt).toBeNull();
  expect(after.closing.record.map(({ closed, words }) => [closed, words])).toEqual([
    [true, 'Groove closed, no pain on pressure.'],
    [false, 'Red streak since this morning.'],
  ]);
  expect(await (await send('/api/patient/state', {})).json()).toMatchObject({ closed: false });
  const { linkEndsAt } = await clinic.database.episode.findUniqueOrThrow({ where: { id: toe.episodeId } });
  expect(linkEndsAt.getTime()).toBeGreaterThan(Date.now() + 100 * DAY_MS);
});
