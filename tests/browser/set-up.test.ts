/** Setting up at the clinic's desk in a real browser: an episode by keyboard, its sheet, its link; and who is let in where. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { base32 } from '@better-auth/utils/base32';
import { createOTP } from '@better-auth/utils/otp';
import { PDFDocument } from 'pdf-lib';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PASSWORD } from '../../lib/commands/demo-cases';
import { type Database, openDatabase } from '../../lib/edges/db/open-database';
import { ROOT } from '../architecture/source-tree';
import { hasChromium, openBrowser, startPages } from './start-pages';

const DESK = { viewport: { width: 1280, height: 800 }, locale: 'en-GB' };
const PHONE = { viewport: { width: 390, height: 844 }, locale: 'en-GB', hasTouch: true };
const TOE = path.join(ROOT, 'sample-images', 'measured', 'light-warm-led.jpg');
/** Card, Moran and Newell 1983, keystroke-level model: a key of an average typist, and getting ready for each thing chosen. */
const KEY_MS = 280;
const THINK_MS = 1350;

describe.skipIf(!hasChromium())('setting up', () => {
  const data = mkdtempSync(path.join(tmpdir(), 'foldwatch-set-up-'));
  let pages: { port: number; stop: () => void };
  let browser: Browser;
  let database: Database;
  const contexts: BrowserContext[] = [];
  const complaints: string[] = [];

  function command(name: string): void {
    const file = path.join(ROOT, 'lib', 'commands', `${name}.ts`);
    const { status, stderr } = spawnSync(process.execPath, ['--import', 'tsx', file], { cwd: ROOT, env: { ...process.env, FOLDWATCH_DATA: data }, encoding: 'utf8' });
    if (status !== 0) throw new Error(`${name} ended with ${status}: ${stderr}`);
  }
  beforeAll(async () => {
    command('migrate');
    command('seed');
    database = await openDatabase(path.join(data, 'foldwatch.sqlite'));
    pages = await startPages({ FOLDWATCH_DATA: data });
    browser = await openBrowser();
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    pages?.stop();
    await database?.$disconnect();
    rmSync(data, { recursive: true, force: true });
  });
  afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close();
    expect(complaints.splice(0)).toEqual([]);
  });

  async function open(options: object = DESK): Promise<Page> {
    const context = await browser.newContext(options);
    contexts.push(context);
    const page = await context.newPage();
    page.setDefaultTimeout(20_000);
    page.on('pageerror', (error) => complaints.push(String(error)));
    page.on('console', (message) => message.type() === 'error' && /Content Security Policy|hydrat/i.test(message.text()) && complaints.push(message.text()));
    return page;
  }
  /** Signing in is tried once for each person; later pages of theirs begin with the session they have. */
  const sessions = new Map<string, Awaited<ReturnType<BrowserContext['storageState']>>>();
  async function signIn(who: string, place: string, options: object = DESK): Promise<Page> {
    const storageState = sessions.get(who);
    const page = await open({ ...options, storageState });
    if (storageState) {
      await page.goto(`http://localhost:${pages.port}${place}`);
      return page;
    }
    await page.goto(`http://localhost:${pages.port}/sign-in`);
    await page.getByLabel('Work e-mail').fill(`${who}@heronlane.example`);
    await page.getByLabel('Password').fill(DEMO_PASSWORD);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL((address) => !address.pathname.endsWith('/sign-in'));
    sessions.set(who, await page.context().storageState());
    await page.goto(`http://localhost:${pages.port}${place}`);
    return page;
  }
  const violationsOf = async (page: Page) => (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
  const overflow = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

  it('starts an episode by keyboard alone in under a minute, prints its sheet, and the link on it opens the patient’s page', async () => {
    const page = await signIn('nurse', '/episodes/new');
    await page.waitForFunction(() => document.activeElement?.getAttribute('type') === 'radio');
    const focused = () => page.evaluate(() => document.activeElement?.closest('fieldset')?.querySelector('legend')?.textContent ?? document.activeElement?.closest('label, div')?.querySelector('label')?.textContent ?? '');
    let keys = 0;
    const press = async (key: string) => {
      keys += 1;
      await page.keyboard.press(key);
    };
    const to = async (legend: string) => {
      for (let tries = 0; (await focused()) !== legend; tries += 1) {
        if (tries > 40) throw new Error(`The keyboard does not come to “${legend}”; it is at “${await focused()}”.`);
        await press('Tab');
      }
    };
    const choices: readonly (readonly [legend: string, ...keys: string[]])[] = [
      ['Big toe', 'Space'],
      ['Side (needed)', 'Tab', 'Space'],
      ['Strip of nail removed', 'Space', 'ArrowRight', 'ArrowRight'],
      ['Matricectomy (needed)', 'Space', 'ArrowRight', 'ArrowRight', 'ArrowRight'],
      ['Anaesthetic given', 'Space', 'ArrowRight', 'ArrowRight'],
      ['Antibiotic', 'Space'],
      ['Edge left behind', 'Space', 'ArrowRight'],
      ['Pus', 'Space', 'ArrowRight'],
      ['Bone', 'Space', 'ArrowRight'],
      ['If the partial removal fails', 'Space'],
      ['At risk because of', 'Space'],
    ];
    const begun = Date.now();
    for (const [legend, ...pressed] of choices) {
      await to(legend);
      for (const key of pressed) await press(key);
    }
    keys += 1;
    await page.keyboard.press('Control+Enter');
    await page.getByRole('heading', { name: /^Case HL-\d+ has been started$/ }).waitFor();
    const machineMs = Date.now() - begun;
    const person = (keys * KEY_MS + choices.length * THINK_MS + machineMs) / 1000;
    console.log(`An episode by keyboard: ${keys} keys, ${choices.length} choices, ${machineMs} ms of the machine; a person takes ${person.toFixed(1)} s.`);
    expect(person).toBeLessThan(60);

    const caseCode = /HL-\d+/.exec(await page.getByRole('heading', { level: 1 }).innerText())?.[0] ?? '';
    const kept = await database.episode.findFirstOrThrow({ where: { caseCode }, include: { procedure: true } });
    expect(kept).toMatchObject({ risks: '["diabetes"]', procedure: { foot: 'left', treatedSides: '["lateral"]', stripMm: 3, edge: 'spike', matricectomy: 'phenol60', pusSeen: false, boneFelt: false, ifItFails: 'partialAgain' } });
    expect(kept.procedure!.at.getTime() - kept.procedure!.anaestheticAt!.getTime()).toBe(20 * 60_000);

    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Card and aftercare sheet as PDF' }).click()]);
    expect(download.suggestedFilename()).toBe(`${caseCode}.pdf`);
    expect((await PDFDocument.load(readFileSync(await download.path()))).getPageCount()).toBe(2);

    const address = await page.getByRole('link', { name: /\/p\// }).innerText();
    const phone = await open(PHONE);
    await phone.goto(address);
    await phone.getByRole('heading', { name: 'The day of your nail operation' }).waitFor();
    await page.getByRole('button', { name: 'Make a new link' }).click();
    await page.getByRole('button', { name: 'Yes, make a new link' }).click();
    await page.getByText('There is a new link.').waitFor();
    await phone.goto(address);
    await phone.getByRole('heading', { name: 'This link does not open any more' }).waitFor();
  });

  it('keeps a photo from before the procedure, and shows it with the card and the link on a page of its own', async () => {
    const page = await signIn('clinician', '/episodes/new');
    await page.getByLabel('Lateral (towards the second toe)').check();
    await page.getByLabel('Phenol 30 s').check();
    await page.getByLabel('Photo before the procedure').setInputFiles(TOE);
    await page.getByRole('button', { name: 'Start the episode' }).click();
    await page.getByText('Before the procedure, just now: not measured yet').waitFor();
    const caseCode = /HL-\d+/.exec(await page.getByRole('heading', { level: 1 }).innerText())?.[0] ?? '';
    expect(await database.photo.findMany({ where: { episode: { caseCode } } })).toMatchObject([{ kind: 'before' }]);
    await page.goto(`http://localhost:${pages.port}/episodes/${caseCode}/sheet`);
    await page.getByText(/The link opens until/).waitFor();
    await page.getByRole('button', { name: 'Add a card' }).click();
    await page.getByText('There is another card. Print it.').waitFor();
    expect(await database.card.count({ where: { episode: { caseCode } } })).toBe(2);
    expect(await violationsOf(page)).toEqual([]);
  });

  it('says what is missing before anything is sent', async () => {
    const page = await signIn('nurse', '/episodes/new');
    const before = await database.episode.count();
    await page.getByRole('button', { name: 'Start the episode' }).click();
    await page.getByText('Which side was treated? Choose one or both.').waitFor();
    expect(await database.episode.count()).toBe(before);
  });

  it.each([
    ['a desk, by light', { ...DESK, colorScheme: 'light' }],
    ['a desk, by dark', { ...DESK, colorScheme: 'dark' }],
    ['a phone, by light', { ...PHONE, colorScheme: 'light' }],
    ['a phone, by dark', { ...PHONE, colorScheme: 'dark' }],
  ])('meets no barrier that axe knows on %s, and nothing lies beside the screen', async (_, options) => {
    const page = await signIn('lead', '/episodes/new', options);
    await page.getByRole('heading', { name: 'Start an episode' }).waitFor();
    expect(await violationsOf(page)).toEqual([]);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
  });

  it('changes a limit as a new version, asked about where the rule would hear less, and shows who did it and why', async () => {
    const page = await signIn('lead', '/clinic/rules');
    await page.getByText('Nothing yet: these are the limits that came with the program.').waitFor();
    await page.getByRole('button', { name: 'Change: Fever: from this temperature on' }).click();
    const form = page.getByRole('form', { name: 'Change: Fever: from this temperature on' });
    await form.getByLabel('New number, °C').fill('39');
    await form.getByLabel('Source').fill('clinic meeting in November');
    await form.getByLabel('Reason').fill('the thermometers at home read high');
    await form.getByRole('button', { name: 'Keep as a new version' }).click();
    await page.getByText('fever.celsius may lie between 37.5 and 38.5 Cel, received 39.').waitFor();
    await form.getByLabel('New number, °C').fill('38,5');
    await form.getByRole('button', { name: 'Keep as a new version' }).click();
    await page.getByText('Fever: from this temperature on: 38 becomes 38.5 °C. The rule hears less.').waitFor();
    expect(await database.ruleBookVersion.count()).toBe(0);
    await page.getByRole('button', { name: 'Change it all the same' }).click();
    await page.getByText(/^Version 1, .*Pavel Lind, lead$/).waitFor();
    await page.getByText('Fever: from this temperature on: 38 → 38.5 °C (clinic meeting in November)').waitFor();
    await page.getByText('Why: the thermometers at home read high').waitFor();
    const nurse = await signIn('nurse', '/clinic/rules');
    await nurse.getByText(/^Version 1, /).waitFor();
    expect(await nurse.getByRole('button', { name: /^Change:/ }).count()).toBe(0);
  });

  it('adds a plan, which is then offered for a new episode', async () => {
    const page = await signIn('lead', '/clinic/plans');
    await page.getByRole('button', { name: 'Add a plan' }).click();
    await page.getByRole('textbox', { name: 'Name' }).fill('Dressing a day, three soaks');
    await page.getByRole('textbox', { name: 'Soaks a day' }).fill('3');
    await page.getByRole('button', { name: 'Keep the plan' }).click();
    await page.getByText('Dressing a day, three soaks').waitFor();
    await page.goto(`http://localhost:${pages.port}/episodes/new`);
    await page.getByLabel('Dressing a day, three soaks').check();
  });

  it('invites somebody, who makes a password, signs in, and has a second factor from then on', async () => {
    const admin = await signIn('admin', '/clinic/people');
    await admin.getByLabel('Name').fill('Ayo Brandt');
    await admin.getByLabel('Work e-mail').fill('ayo@heronlane.example');
    await admin.getByRole('radio', { name: 'Clinician', exact: true }).check();
    await admin.getByRole('button', { name: 'Make an invitation' }).click();
    const address = await admin.getByText(/\/join#/).innerText();
    const page = await open();
    await page.goto(address);
    await page.getByLabel('New password').fill('four words in a row');
    await page.getByRole('button', { name: 'Keep my password' }).click();
    await page.getByRole('heading', { name: 'Your password is kept' }).waitFor();
    await page.getByRole('link', { name: 'Sign in' }).click();
    const enter = async () => {
      await page.getByLabel('Work e-mail').fill('ayo@heronlane.example');
      await page.getByLabel('Password').fill('four words in a row');
      await page.getByRole('button', { name: 'Sign in' }).click();
    };
    await enter();
    await page.getByRole('heading', { name: 'To be looked at' }).waitFor();
    await page.goto(`http://localhost:${pages.port}/account`);
    await page.getByRole('button', { name: 'Set up' }).click();
    await page.getByRole('img', { name: 'Square code for the authenticator app' }).waitFor();
    expect(await violationsOf(page)).toEqual([]);
    // As somebody types it who cannot scan: in the database it lies sealed.
    const secret = (await page.getByText(/^([A-Z2-7]{4} ?){6,}$/).innerText()).replaceAll(' ', '');
    expect((await database.staffSecondFactor.findFirstOrThrow()).secret).not.toContain(secret);
    const code = (off: number) => createOTP(base32.decode(secret)).hotp(Math.floor(Date.now() / 30_000) + off);
    await page.getByLabel('The code that the app shows').fill(await code(0));
    await page.getByRole('button', { name: 'Confirm' }).click();
    await page.getByRole('heading', { name: 'It counts from now on' }).waitFor();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await enter();
    await page.getByLabel('Code').fill(await code(1));
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('heading', { name: 'To be looked at' }).waitFor();
  });

  it.each([
    ['lead', '/clinic/rules', 'Rule book'],
    ['lead', '/clinic/plans', 'Plans'],
    ['lead', '/clinic/audit', 'Who did what'],
    ['lead', '/clinic/numbers', 'Numbers and paper'],
    ['admin', '/clinic/people', 'People'],
    ['nurse', '/account', 'Your account'],
  ])('shows the %s %s without a barrier that axe knows, on desk and phone, by light and dark', async (who, place, title) => {
    for (const options of [{ ...DESK, colorScheme: 'dark' }, { ...PHONE, colorScheme: 'light' }]) {
      const page = await signIn(who, place, options);
      await page.getByRole('heading', { name: title }).first().waitFor();
      expect(await violationsOf(page)).toEqual([]);
      expect(await overflow(page)).toBeLessThanOrEqual(0);
    }
  });

  it.each([
    ['nurse', ['/clinic/people', '/clinic/audit', '/clinic/numbers']],
    ['lead', ['/clinic/people']],
    ['admin', ['/episodes/new', '/episodes/HL-101', '/episodes/HL-101/sheet', '/clinic/plans', '/clinic/rules']],
  ])('has no place for the %s that is not theirs', async (who, places) => {
    const page = await signIn(who, '/account');
    for (const place of places) {
      const response = await page.goto(`http://localhost:${pages.port}${place}`);
      expect([place, response?.status()]).toEqual([place, 404]);
      await page.getByRole('heading', { name: 'There is no such page for you' }).waitFor();
    }
  });

  it('is not there for whoever is not signed in', async () => {
    const page = await open();
    for (const place of ['/episodes/new', '/episodes/HL-101/sheet', '/clinic', '/clinic/plans', '/clinic/rules', '/clinic/people', '/clinic/audit', '/account']) {
      await page.goto(`http://localhost:${pages.port}${place}`);
      await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    }
  });
});
