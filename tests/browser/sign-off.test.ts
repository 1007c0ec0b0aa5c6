/** The clinician at the follow-up in a real browser: an outline drawn anew, the report, the sign-off, and who is not let in. */
import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PASSWORD } from '../../lib/commands/demo-cases';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { closeStore, type Store, store } from '../../lib/server/store';
import { workOnAssessment } from '../../lib/server/work-on-assessment';
import { workOnPhoto } from '../../lib/server/work-on-photo';
import { ROOT } from '../architecture/source-tree';
import { hasChromium, openBrowser, startPages } from './start-pages';

const DESK = { viewport: { width: 1280, height: 800 }, locale: 'en-GB' };
const PHONE = { viewport: { width: 390, height: 844 }, locale: 'en-GB', hasTouch: true };

describe.skipIf(!hasChromium())('the clinician at the follow-up', () => {
  const data = mkdtempSync(path.join(tmpdir(), 'foldwatch-sign-off-'));
  let pages: { port: number; stop: () => void };
  let browser: Browser;
  let open: Store;
  let link: string;
  const contexts: BrowserContext[] = [];
  const complaints: string[] = [];
  const at = (place: string) => `http://localhost:${pages.port}${place}`;

  function command(name: string): string {
    const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', path.join(ROOT, 'lib', 'commands', `${name}.ts`)], { cwd: ROOT, env: { ...process.env, FOLDWATCH_DATA: data }, encoding: 'utf8' });
    if (status !== 0) throw new Error(`${name} ended with ${status}: ${stderr}`);
    return stdout;
  }
  async function askRules(): Promise<void> {
    while (await workOnAssessment(open)) {
      // until none is due
    }
  }

  beforeAll(async () => {
    command('migrate');
    link = /HL-101.*?(\/p\/[\w-]+)/.exec(command('seed'))?.[1] ?? '';
    process.env.FOLDWATCH_DATA = data;
    open = await store();
    const newest = await open.database.photo.findFirstOrThrow({ where: { episode: { caseCode: 'HL-101' } }, orderBy: { receivedAt: 'desc' } });
    // One photo is measured; the others are as if nobody had come to them.
    await open.database.job.updateMany({ where: { photoId: { not: newest.id } }, data: { state: 'done' } });
    const ports = await analysisPorts();
    await workOnPhoto(open, { id: randomUUID(), leaseMs: 60_000, ports });
    await askRules();
    pages = await startPages({ FOLDWATCH_DATA: data });
    browser = await openBrowser();
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    pages?.stop();
    await closeStore();
    delete process.env.FOLDWATCH_DATA;
    rmSync(data, { recursive: true, force: true });
  });
  afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close();
    expect(complaints.splice(0)).toEqual([]);
  });

  async function fresh(options: object = DESK): Promise<Page> {
    const context = await browser.newContext(options);
    contexts.push(context);
    const page = await context.newPage();
    page.setDefaultTimeout(30_000);
    page.on('pageerror', (error) => complaints.push(String(error)));
    page.on('console', (message) => message.type() === 'error' && /Content Security Policy|hydrat/i.test(message.text()) && complaints.push(message.text()));
    return page;
  }
  async function signIn(who: string, place: string, options: object = DESK): Promise<Page> {
    const page = await fresh(options);
    await page.goto(at('/sign-in'));
    await page.getByLabel('Work e-mail').fill(`${who}@heronlane.example`);
    await page.getByLabel('Password').fill(DEMO_PASSWORD);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL((address) => !address.pathname.endsWith('/sign-in'));
    await page.goto(at(place));
    return page;
  }

  it('answers what is wrong, how it looks and how it went on the first screen, with no empty paper', async () => {
    const page = await signIn('clinician', '/episodes/HL-101');
    const last = page.getByRole('region', { name: 'What came last' });
    await last.getByText(/Photo, day 14\.0: measured\./).waitFor();
    await last.getByText('6 of 10').waitFor();
    await last.getByText(/redness has spread/).waitFor();
    const below = await last.getByText('6 of 10').evaluate((one) => one.getBoundingClientRect().bottom);
    expect(below).toBeLessThan(800);
    expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([]);
    await page.goto(at('/episodes/HL-104'));
    // Nobody has come to its photos: five series have no value, and pain was said.
    await page.getByText(/^Redness area; .*Raw area:/).waitFor();
    expect(await page.getByRole('figure').filter({ has: page.locator('figcaption', { hasText: /^Pain/ }) }).count()).toBe(1);
    expect(await page.getByRole('figure').filter({ has: page.locator('figcaption', { hasText: /^Redness area/ }) }).count()).toBe(0);
  });

  it('draws an outline anew, sees the numbers at once, and finds both versions kept', async () => {
    const page = await signIn('clinician', '/episodes/HL-101');
    await page.getByRole('button', { name: /Draw an outline of day 14/ }).click();
    await page.getByRole('button', { name: 'Begin from the line that is there' }).click();
    await page.getByText('With this line:').waitFor();
    await page.getByRole('button', { name: /^Point 1:/ }).press('ArrowRight');
    await page.getByRole('button', { name: /^Point 1:.*held/ }).waitFor();
    await page.getByLabel('Why it is drawn anew').fill('Seen by eye at the visit.');
    await page.getByRole('button', { name: 'Keep this version' }).click();
    await page.getByText(/Version 1, redness drawn by hand: Ruth Okonjo.*Seen by eye at the visit/).first().waitFor();
    const versions = await open.database.outlineVersion.findMany();
    expect(versions).toMatchObject([{ number: 1, reason: 'Seen by eye at the visit.' }]);
    expect(await open.database.analysis.count()).toBe(1);
    await askRules();
  });

  it.each([
    ['desk, light', { ...DESK, colorScheme: 'light' }],
    ['phone, dark', { ...PHONE, colorScheme: 'dark' }],
  ])('reads a report without a barrier that axe knows (%s)', async (_, options) => {
    const page = await signIn('clinician', '/episodes/HL-101/report', options);
    await page.getByRole('heading', { name: 'Report of case HL-101' }).waitFor();
    await page.getByText(/Version 1, redness drawn by hand/).first().waitFor();
    await page.getByText('not measured yet').first().waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
    // What is most cautious comes first.
    expect((await page.getByRole('heading', { level: 2 }).allInnerTexts())[0]).toBe('Before you rely on this report');
    expect((await page.request.get(at('/api/episodes/HL-101/report'))).headers()['content-type']).toBe('application/pdf');
    expect((await page.request.get(at('/api/episodes/HL-101/fhir'))).headers()['content-type']).toMatch(/^application\/fhir\+json/);
  });

  it('closes the follow-up with a word on everything, the patient is told whom to call, and it is opened again', async () => {
    const page = await signIn('clinician', '/episodes/HL-101');
    await page.getByRole('button', { name: 'Close the follow-up' }).click();
    await page.getByLabel('What was found at the follow-up').fill('Groove closed, no discharge.');
    await page.getByRole('button', { name: 'Close the follow-up' }).click();
    await page.getByText(/is open: settled, or left open\?/).waitFor();
    const questions = page.getByRole('group', { name: /What becomes of/ });
    const count = await questions.count();
    expect(count).toBeGreaterThan(0);
    for (let one = 0; one < count; one += 1) {
      await questions.nth(one).getByRole('radio', { name: one === 0 ? 'Left open' : 'Settled' }).check();
    }
    for (const note of await page.getByLabel(/What settled it|What is left open/).all()) await note.fill('Dr Okonjo looks again in a week.');
    const { violations } = await new AxeBuilder({ page }).include('form').analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await page.getByRole('button', { name: 'Close the follow-up' }).click();
    await page.getByText('Left open: ').waitFor();
    await page.getByText(/Closed on .* by Ruth Okonjo/).waitFor();

    const phone = await fresh(PHONE);
    await phone.goto(at(link));
    await phone.getByRole('heading', { name: 'Your clinic has ended this follow-up' }).waitFor();
    await phone.getByRole('link', { name: /01632 960134/ }).waitFor();
    expect(await phone.getByText(/healed|healing|fine|normal/i).count()).toBe(0);

    await page.getByLabel('Why the case goes on').fill('Red again since yesterday.');
    await page.getByRole('button', { name: 'Open the case again' }).click();
    await page.getByText('Opened again').waitFor();
    await phone.reload();
    await phone.getByRole('heading', { name: /Day 15/ }).waitFor();
  });

  it('is not the nurse’s to close, and nobody’s without signing in', async () => {
    const nurse = await signIn('nurse', '/episodes/HL-101');
    await nurse.getByRole('heading', { name: 'Sign-off' }).waitFor();
    expect(await nurse.getByRole('button', { name: 'Close the follow-up' }).count()).toBe(0);
    const { id } = await open.database.episode.findFirstOrThrow({ where: { caseCode: 'HL-101' } });
    const refused = await nurse.evaluate(async (place) => (await fetch(place, { method: 'POST', body: JSON.stringify({ step: 'reopen', reason: 'because' }) })).status, `/api/staff/episodes/${id}/closing`);
    expect(refused).toBe(404);
    const admin = await signIn('admin', '/account');
    expect((await admin.goto(at('/episodes/HL-101/report')))?.status()).toBe(404);
    for (const form of ['report', 'fhir', 'csv']) expect((await admin.request.get(at(`/api/episodes/HL-101/${form}`))).status()).toBe(404);
    const nobody = await fresh();
    await nobody.goto(at('/episodes/HL-101/report'));
    await nobody.getByRole('heading', { name: 'Sign in' }).waitFor();
    expect((await nobody.request.get(at('/api/episodes/HL-101/report'))).status()).toBe(401);
  });
});
