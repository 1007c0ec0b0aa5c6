/** Starting an episode and handing out its link and cards, asked through the routes as a browser does. */
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FIRST_PLAN_TEMPLATES } from '../../lib/care/plan-templates';
import type { Started } from '../../lib/care/start-contract';
import { startStaff } from '../../lib/edges/db/start-staff';
import { hashPassword } from '../../lib/edges/session/staff-password';
import { closeStore } from '../../lib/server/store';
import { ROOT } from '../architecture/source-tree';
import { type TestDatabase, testClinic, testDatabase } from '../edges/db/test-database';
import { samplePhoto, sha256Of } from '../journey/test-clinic';

const ORIGIN = 'http://clinic.test';
const PASSWORD = 'correct horse battery';
const HOUR_MS = 3_600_000;

let test: TestDatabase;
let clinicId: string;
let plans: string[];
const cookies = new Map<string, string>();

type Handler = (request: Request, place: { params: Promise<Record<string, string>> }) => Promise<Response>;
interface Asked {
  readonly as?: string;
  readonly body?: unknown;
  readonly bytes?: Uint8Array<ArrayBuffer>;
  readonly headers?: Readonly<Record<string, string>>;
  readonly params?: Readonly<Record<string, string>>;
}
async function ask(method: string, place: string, { as = '', body, bytes, headers = {}, params = {} }: Asked = {}): Promise<Response> {
  const { [method]: handler } = (await import(/* @vite-ignore */ path.join(ROOT, 'app', place, 'route.ts'))) as Record<string, Handler>;
  const cookie = cookies.get(as);
  const address = place.replace(/\[(\w+)\]/g, (_, name: string) => params[name]);
  const all = { host: 'clinic.test', origin: ORIGIN, ...headers, ...(cookie ? { cookie } : {}) };
  return handler(new Request(`${ORIGIN}/${address}`, { method, headers: all, body: bytes ?? (body === undefined ? undefined : JSON.stringify(body)) }), { params: Promise.resolve({ ...params }) });
}

const minutesAgo = (minutes: number) => new Date(Date.now() - minutes * 60_000).toISOString();
const body = (more: object = {}, procedure: object = {}) => ({
  id: crypto.randomUUID(),
  procedure: { at: minutesAgo(20), matricectomy: 'phenol60', treatedSides: ['lateral'], stripMm: 3, edge: 'whole', pusSeen: false, boneFelt: false, anaestheticAt: minutesAgo(40), foot: 'left', ifItFails: 'refer', ...procedure },
  risks: ['diabetes'],
  antibioticStartedAt: null,
  language: 'es',
  birthYear: null,
  planTemplateId: plans[0],
  ...more,
});
const start = (more: object = {}, procedure: object = {}, as = 'nurse') => ask('POST', 'api/staff/episodes', { as, body: body(more, procedure) });
const started = async (): Promise<Started> => (await (await start()).json()) as Started;
const change = (what: string, episodeId: string, words: unknown, as = 'nurse') => ask('POST', `api/staff/episodes/[episodeId]/${what}`, { as, body: words, params: { episodeId } });
const opens = async ({ secret }: Started['link']) => (await ask('GET', 'p/[token]', { params: { token: secret } })).headers.get('location');

beforeAll(async () => {
  test = await testDatabase();
  process.env.FOLDWATCH_DATA = test.folder;
  const { database } = test;
  clinicId = await testClinic(database);
  const other = await testClinic(database, { name: 'Other Clinic', asksBirthYear: true });
  const passwordHash = await hashPassword(PASSWORD);
  for (const role of ['nurse', 'lead', 'admin'] as const) await startStaff(database, { name: role, role, email: `${role}@clinic.test`, clinicId, passwordHash }, new Date());
  await startStaff(database, { name: 'stranger', role: 'lead', email: 'stranger@clinic.test', clinicId: other, passwordHash }, new Date());
  for (const name of ['nurse', 'lead', 'admin', 'stranger']) {
    const response = await ask('POST', 'api/staff/sign-in', { body: { email: `${name}@clinic.test`, password: PASSWORD } });
    cookies.set(name, (response.headers.get('set-cookie') ?? '').split(';')[0]);
  }
  plans = (await database.planTemplate.findMany({ where: { clinicId }, orderBy: { name: 'asc' } })).map(({ id }) => id);
});
afterAll(async () => {
  await closeStore();
  await test.close();
});

describe('starting an episode', () => {
  it('keeps what was done, gives a case code, a plan, a card and a link that opens, and keeps no secret', async () => {
    const response = await start();
    expect(response.status).toBe(200);
    const { episodeId, caseCode, link, cardSerial } = (await response.json()) as Started;
    expect(caseCode).toBe('HF-101');
    expect(link.address).toBe(`${ORIGIN}/p/${link.secret}`);
    const kept = await test.database.episode.findUniqueOrThrow({ where: { id: episodeId }, include: { procedure: true, plans: true, cards: true, audit: true } });
    expect(kept).toMatchObject({ clinicId, caseCode, language: 'es', risks: '["diabetes"]', procedure: { matricectomy: 'phenol60', foot: 'left', ifItFails: 'refer', stripMm: 3 } });
    expect(JSON.parse(kept.plans[0].json)).toEqual(FIRST_PLAN_TEMPLATES[0].plan);
    expect(kept.cards).toMatchObject([{ serial: cardSerial, barReadsMm: null, retiredAt: null }]);
    expect(kept.audit).toMatchObject([{ action: 'episode.start', rule: 'nurse may episode.start (clinic)' }]);
    expect(JSON.stringify(kept)).not.toContain(link.secret);
    expect(await opens(link)).toBe('/today');
  });

  it('counts the case codes up, and starts one episode where the button was pressed twice', async () => {
    const twice = body();
    const answers = await Promise.all([1, 2].map(() => ask('POST', 'api/staff/episodes', { as: 'nurse', body: twice })));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
    const codes = (await test.database.episode.findMany({ where: { clinicId } })).map(({ caseCode }) => caseCode);
    expect(new Set(codes)).toEqual(new Set(['HF-101', 'HF-102']));
  });

  it.each([
    ['no side', {}, { treatedSides: [] }, 'Which side was treated? Choose one or both.'],
    ['a time to come', {}, { at: new Date(Date.now() + 5 * HOUR_MS).toISOString() }, 'The procedure lies in the future. Is the time right?'],
    ['a time long past', {}, { at: minutesAgo(60 * 24 * 20), anaestheticAt: null }, 'The procedure lies more than 14 days back. Is the date right?'],
    ['an anaesthetic of another day', {}, { anaestheticAt: minutesAgo(60 * 30) }, 'The anaesthetic and the procedure lie more than 12 hours apart. Is the time right?'],
    ['an impossible year of birth', { birthYear: 1700 }, {}, 'Nobody who lives was born in 1700. Is the year right?'],
    ['a plan of nobody', { planTemplateId: 'none' }, {}, 'That plan is not offered any more. Choose another.'],
  ])('says what is wrong with %s', async (_, more, procedure, sentence) => {
    const response = await start(more, procedure);
    expect([response.status, await response.json()]).toEqual([400, { problem: 'notComplete', sentence }]);
  });

  it('takes no name and no field that it does not know', async () => {
    expect((await start({ patientName: 'Somebody' })).status).toBe(400);
  });

  it('is not offered the plan of another clinic, and asks for a year of birth where that clinic wants one', async () => {
    expect(await (await start({}, {}, 'stranger')).json()).toMatchObject({ sentence: 'This clinic asks for the year of birth after the link. Enter it.' });
    expect(await (await start({ birthYear: 1980 }, {}, 'stranger')).json()).toMatchObject({ sentence: 'That plan is not offered any more. Choose another.' });
  });
});

describe('the link', () => {
  it('dies when a new one is made, on the phones that it opened too', async () => {
    const { episodeId, link } = await started();
    const opened = await ask('GET', 'p/[token]', { params: { token: link.secret } });
    cookies.set('patient', (opened.headers.get('set-cookie') ?? '').split(';')[0]);
    expect((await ask('GET', 'api/patient/state', { as: 'patient' })).status).toBe(200);
    const renewed = (await (await change('link', episodeId, { step: 'renew' })).json()) as Pick<Started, 'link'>;
    expect(await opens(link)).toBe('/link-ended');
    expect((await ask('GET', 'api/patient/state', { as: 'patient' })).status).toBe(401);
    expect(await opens(renewed.link)).toBe('/today');
  });

  it('can be ended, and is nobody else’s to end', async () => {
    const { episodeId, link } = await started();
    for (const as of ['stranger', 'admin']) expect((await change('link', episodeId, { step: 'end' }, as)).status).toBe(404);
    expect(await opens(link)).toBe('/today');
    expect((await change('link', episodeId, { step: 'end' })).status).toBe(200);
    expect(await opens(link)).toBe('/link-ended');
  });
});

describe('the sheet', () => {
  it('is two pages with the link, and one without it', async () => {
    const { PDFDocument } = await import('pdf-lib');
    const { episodeId, link, cardSerial, caseCode } = await started();
    const pagesOf = async (secret: string | null) => {
      const response = await change('sheet', episodeId, { secret, serial: cardSerial });
      expect(response.headers.get('content-type')).toBe('application/pdf');
      expect(response.headers.get('content-disposition')).toBe(`attachment; filename="${caseCode}.pdf"`);
      return (await PDFDocument.load(await response.arrayBuffer())).getPageCount();
    };
    expect(await pagesOf(link.secret)).toBe(2);
    expect(await pagesOf(null)).toBe(1);
  });

  it('is not printed with a link that opens nothing, or a card of somebody else', async () => {
    const [mine, other] = [await started(), await started()];
    expect((await change('sheet', mine.episodeId, { secret: other.link.secret, serial: mine.cardSerial })).status).toBe(409);
    expect((await change('sheet', mine.episodeId, { secret: mine.link.secret, serial: other.cardSerial })).status).toBe(404);
    await change('link', mine.episodeId, { step: 'end' });
    expect((await change('sheet', mine.episodeId, { secret: mine.link.secret, serial: mine.cardSerial })).status).toBe(409);
  });
});

describe('a card', () => {
  it('can be added, measured with a ruler, and taken out of use, but never the last', async () => {
    const { episodeId, cardSerial } = await started();
    expect((await change('cards', episodeId, { step: 'retire', serial: cardSerial })).status).toBe(409);
    const { serial } = (await (await change('cards', episodeId, { step: 'add' })).json()) as { serial: string };
    expect((await change('cards', episodeId, { step: 'measure', serial, barReadsMm: 49.5 })).status).toBe(200);
    expect(await (await change('cards', episodeId, { step: 'measure', serial, barReadsMm: 1.97 })).json()).toMatchObject({ problem: 'notComplete' });
    expect((await change('cards', episodeId, { step: 'retire', serial: cardSerial })).status).toBe(200);
    const cards = await test.database.card.findMany({ where: { episodeId }, orderBy: { madeAt: 'asc' } });
    expect(cards).toMatchObject([{ serial: cardSerial, retiredAt: expect.any(Date) }, { serial, barReadsMm: 49.5, retiredAt: null }]);
  });
});

describe('a photo of the day', () => {
  it('is kept once, as what it is, and waits for the worker; a broken one is refused', async () => {
    const { episodeId } = await started();
    const bytes = Uint8Array.from(samplePhoto('measured/light-warm-led.jpg'));
    const headers = { 'x-photo-sha256': sha256Of(bytes), 'x-photo-length': String(bytes.length) };
    const send = (kind: string, sent = bytes) => ask('PUT', 'api/staff/episodes/[episodeId]/photos/[kind]', { as: 'nurse', bytes: sent, headers, params: { episodeId, kind } });
    expect((await send('before', bytes.slice(0, 100))).status).toBe(409);
    for (let again = 0; again < 2; again += 1) expect((await send('before')).status).toBe(200);
    expect((await send('toe')).status).toBe(400);
    const photos = await test.database.photo.findMany({ where: { episodeId }, include: { job: true } });
    expect(photos).toMatchObject([{ kind: 'before', clientId: 'staff-before', job: { state: 'waiting' } }]);
  });
});

describe('the rule book', () => {
  const source = 'clinic meeting';
  const bookOf = async () => test.database.ruleBookVersion.findMany({ where: { clinicId }, orderBy: { number: 'asc' } });
  const changeBook = (words: object, as = 'lead') => ask('POST', 'api/staff/rule-books', { as, body: { from: 0, changes: [{ id: 'reachModerate.mm', value: 15, source }], reason: 'agreed on', confirmed: false, ...words } });

  it('is changed by a lead alone, as a version of its own with source, reason and name, and open episodes are judged again', async () => {
    const { episodeId } = await started();
    await test.database.episode.update({ where: { id: episodeId }, data: { assessAt: new Date('2126-01-01T00:00:00Z') } });
    for (const as of ['nurse', 'admin', 'stranger']) await changeBook({}, as);
    expect(await bookOf()).toEqual([]);
    const response = await changeBook({});
    expect(await response.json()).toEqual({ number: 1, version: '2026.3 with reachModerate.mm=15' });
    expect(await bookOf()).toMatchObject([{ number: 1, limits: '{"reachModerate.mm":15}', sources: '{"reachModerate.mm":"clinic meeting"}', reason: 'agreed on', madeBy: expect.stringMatching(/^lead:/) }]);
    expect((await test.database.episode.findUniqueOrThrow({ where: { id: episodeId } })).assessAt.getTime()).toBeLessThanOrEqual(Date.now());
  });

  it('asks before a rule hears less, refuses what is out of range or order, and what somebody else has changed meanwhile', async () => {
    const fever = [{ id: 'fever.celsius', value: 38.5, source }];
    expect([(await changeBook({ from: 0 })).status, (await changeBook({ from: 1, changes: [{ id: 'fever.celsius', value: 99, source }] })).status]).toEqual([409, 400]);
    const asked = await changeBook({ from: 1, changes: fever });
    expect([asked.status, await asked.json()]).toEqual([409, { problem: 'lessSensitive', sentences: ['Fever: from this temperature on: 38 becomes 38.5 °C. The rule hears less.'] }]);
    const order = await changeBook({ from: 1, changes: [{ id: 'spreading.mm', value: 1.5, source }, { id: 'spreading.beforeMm', value: 2, source }] });
    expect(await order.json()).toMatchObject({ problem: 'notAllowed' });
    expect((await changeBook({ from: 1, changes: fever, confirmed: true })).status).toBe(200);
    expect((await changeBook({ from: 2, reason: ' ' })).status).toBe(400);
    expect((await bookOf()).map(({ number }) => number)).toEqual([1, 2]);
    expect(JSON.parse((await bookOf())[1].limits)).toEqual({ 'reachModerate.mm': 15, 'fever.celsius': 38.5 });
  });
});

describe('numbers and paper', () => {
  const numbers = { phone: '01632 960199', emergencyPhone: '112', openingHours: 'Monday to Friday', paper: 'letter' };
  const changeClinic = (more: object, as = 'admin') => ask('POST', 'api/staff/clinic', { as, body: { ...numbers, ...more } });

  it('are changed by lead or admin, and the sheet has the new paper', async () => {
    expect((await changeClinic({}, 'nurse')).status).toBe(404);
    expect((await changeClinic({ phone: 'call us' })).status).toBe(400);
    expect((await changeClinic({})).status).toBe(200);
    const { PDFDocument } = await import('pdf-lib');
    const { episodeId, cardSerial } = await started();
    const sheet = await PDFDocument.load(await (await change('sheet', episodeId, { secret: null, serial: cardSerial })).arrayBuffer());
    // 8.5 inches of 72 points.
    expect(sheet.getPage(0).getWidth()).toBeCloseTo(612, 1);
  });
});

describe('a plan', () => {
  const template = { name: 'Dressing 24 h, one soak', plan: { ...FIRST_PLAN_TEMPLATES[0].plan, soaksPerDay: 1 } };
  const changePlan = (words: object, as = 'lead') => ask('POST', 'api/staff/plans', { as, body: words });
  const names = async () => (await test.database.planTemplate.findMany({ where: { clinicId, retiredAt: null }, orderBy: { madeAt: 'asc' } })).map(({ name }) => name);

  it('is added, changed and retired by a lead alone; what patients have stays', async () => {
    const { episodeId } = await started();
    for (const as of ['nurse', 'stranger', 'admin']) await changePlan({ step: 'retire', id: plans[0] }, as);
    expect(await names()).toHaveLength(3);
    const { id } = (await (await changePlan({ step: 'add', template })).json()) as { id: string };
    expect((await changePlan({ step: 'add', template })).status).toBe(409);
    expect((await changePlan({ step: 'change', id, template: { ...template, name: 'One soak' } })).status).toBe(200);
    expect((await changePlan({ step: 'retire', id: plans[0] })).status).toBe(200);
    expect(new Set(await names())).toEqual(new Set([FIRST_PLAN_TEMPLATES[1].name, FIRST_PLAN_TEMPLATES[2].name, 'One soak']));
    const kept = await test.database.plan.findFirstOrThrow({ where: { episodeId } });
    expect(JSON.parse(kept.json)).toEqual(FIRST_PLAN_TEMPLATES[0].plan);
    expect((await start()).status).toBe(400);
  });

  it('is refused with a sentence where a number cannot be', async () => {
    const response = await changePlan({ step: 'add', template: { name: 'Wrong', plan: { ...template.plan, soakMinutes: 900 } } });
    expect([response.status, await response.json()]).toMatchObject([400, { sentence: expect.stringContaining('soakMinutes') }]);
  });
});
