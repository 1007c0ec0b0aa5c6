/** The nurse's round in a real browser against the production build, with the real server behind it and made-up cases. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PASSWORD } from '../../lib/commands/demo-cases';
import type { Finding } from '../../lib/decide/finding';
import { addFindings } from '../../lib/edges/db/add-finding';
import { type Database, openDatabase } from '../../lib/edges/db/open-database';
import { ROOT } from '../architecture/source-tree';
import { hasChromium, openBrowser, startPages } from './start-pages';

const DESK = { viewport: { width: 1280, height: 800 }, locale: 'en-GB' };
const PHONE = { viewport: { width: 360, height: 740 }, locale: 'en-GB', hasTouch: true };

const finding = (more: Partial<Finding>): Finding => ({
  rule: 'spreading',
  level: 'today',
  at: new Date(Date.now() - 3_600_000).toISOString(),
  sentence: 'Reach grew 3.1 mm in 41 h, smallest change we can see is 1.2 mm.',
  evidence: { numbers: [], photos: [], checkIns: [] },
  ruleBookVersion: '2026.3',
  raisedForRisk: false,
  closed: null,
  ...more,
});

describe.skipIf(!hasChromium())('the triage nurse', () => {
  const data = mkdtempSync(path.join(tmpdir(), 'foldwatch-review-'));
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
  async function find(caseCode: string, more: Partial<Finding>): Promise<void> {
    const { id } = await database.episode.findFirstOrThrow({ where: { caseCode } });
    await database.$transaction((queries) => addFindings(queries, id, [finding(more)], new Date()));
  }

  beforeAll(async () => {
    command('migrate');
    command('seed');
    database = await openDatabase(path.join(data, 'foldwatch.sqlite'));
    await find('HL-103', { rule: 'late', level: 'visit', sentence: 'Not dry by day 21.' });
    await find('HL-101', {});
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
    await Promise.all(contexts.splice(0).map((context) => context.close()));
    expect(complaints.splice(0)).toEqual([]);
  });

  async function signIn(email: string, screen: typeof DESK = DESK): Promise<Page> {
    const context = await browser.newContext(screen);
    contexts.push(context);
    const page = await context.newPage();
    page.setDefaultTimeout(15_000);
    page.on('pageerror', ({ message }) => complaints.push(message));
    await page.goto(`http://localhost:${pages.port}/review`);
    await page.getByLabel('Work e-mail').fill(email);
    await page.getByLabel('Password').fill(DEMO_PASSWORD);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'To be looked at' }).waitFor();
    await page.getByRole('button', { name: /HL-/ }).first().waitFor();
    return page;
  }
  const codes = async (page: Page) => (await page.getByRole('button', { name: /HL-\d+/ }).allInnerTexts()).map((text) => /HL-\d+/.exec(text)?.[0]);

  it('finds the worst first, opens it beside the list, keeps a word on it and goes on, without a mouse', async () => {
    const page = await signIn('nurse@heronlane.example');
    expect(await codes(page)).toEqual(['HL-101', 'HL-103']);
    await page.keyboard.press('j');
    await page.keyboard.press('Enter');
    const panel = page.getByRole('region', { name: 'Case HL-101' });
    await panel.getByText('Reach grew 3.1 mm in 41 h').waitFor();
    expect(await codes(page)).toContain('HL-103');
    await page.keyboard.press('n');
    await page.keyboard.press('Control+Enter');
    await panel.getByText('Why is nothing needed? A note is kept with this.').waitFor();
    await page.keyboard.type('Seen in clinic this morning.');
    await page.keyboard.press('Control+Enter');
    await page.getByText('HL-101: Nothing needed. It is kept.').waitFor();
    await panel.waitFor({ state: 'detached' });
    expect(await codes(page)).toEqual(['HL-103']);
    await page.waitForFunction(() => document.activeElement?.textContent?.includes('HL-103'));
    const kept = await database.resolution.findFirstOrThrow({ where: { action: 'nothingNeeded' } });
    expect(kept).toMatchObject({ rule: 'spreading', reason: 'Seen in clinic this morning.' });
  });

  it('begins the list with an arrow from nowhere, and leaves arrows alone beside an open case', async () => {
    const page = await signIn('nurse@heronlane.example');
    const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '');
    await page.keyboard.press('ArrowDown');
    expect(await focused()).toContain((await codes(page))[0]);
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: 'Case HL-103' }).getByText('Not dry by day 21.').waitFor();
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await page.keyboard.press('ArrowDown');
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('BODY');
  });

  it('finds what can be done on the first screen of a case, at 1280 by 800', async () => {
    const page = await signIn('nurse@heronlane.example');
    await page.getByRole('button', { name: /HL-103/ }).click();
    const called = page.getByRole('region', { name: 'Case HL-103' }).getByRole('button', { name: /^Called/ });
    await called.waitFor();
    expect(await called.evaluate((one) => one.getBoundingClientRect().bottom)).toBeLessThan(800);
  });

  it('sees a new emergency come to the top by itself, and hears of it', async () => {
    const page = await signIn('nurse@heronlane.example');
    await find('HL-106', { rule: 'bleeding', level: 'now', sentence: 'Blood keeps coming after 20 min of pressure.' });
    await page.getByRole('status').getByText('New on the list: HL-106, Now').waitFor({ state: 'attached' });
    expect((await codes(page))[0]).toBe('HL-106');
  });

  it('is told who has the case open already, and cannot work on it unawares', async () => {
    const first = await signIn('nurse@heronlane.example');
    await first.getByRole('button', { name: /HL-103/ }).click();
    await first.getByRole('region', { name: 'Case HL-103' }).getByText('Not dry by day 21.').waitFor();
    const second = await signIn('nurse2@heronlane.example');
    await second.getByText('Ines Marlow has it open').waitFor();
    await second.getByRole('button', { name: /HL-103/ }).click();
    await second.getByText(/Ines Marlow has had this case open since/).waitFor();
    expect(await second.getByRole('button', { name: /^Called/ }).isDisabled()).toBe(true);
    await second.getByRole('button', { name: 'Take over' }).click();
    await second.getByText(/Ines Marlow has had this case open since/).waitFor({ state: 'detached' });
    expect(await second.getByRole('button', { name: /^Called/ }).isEnabled()).toBe(true);
  });

  it('can work with a finger: each target is large enough, and nothing lies beside the screen', async () => {
    const page = await signIn('nurse@heronlane.example', PHONE);
    await page.getByRole('button', { name: /HL-103/ }).click();
    await page.getByRole('region', { name: 'Case HL-103' }).getByText('Not dry by day 21.').waitFor();
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('button, a, summary')]
        .map((one) => ({ name: one.textContent, height: one.getBoundingClientRect().height, width: one.getBoundingClientRect().width }))
        .filter(({ height, width }) => width > 0 && (height < 43.5 || width < 43.5)),
    );
    expect(small).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);
  });

  it.each(['light', 'dark'] as const)('meets no barrier that axe knows, by %s', async (colorScheme) => {
    const page = await signIn('nurse@heronlane.example', { ...DESK, colorScheme } as typeof DESK);
    await page.getByRole('button', { name: /HL-103/ }).click();
    await page.getByRole('region', { name: 'Case HL-103' }).getByText('Not dry by day 21.').waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
  });

  it('sees nothing without signing in, and nothing after signing out', async () => {
    const page = await signIn('nurse@heronlane.example');
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    await page.goto(`http://localhost:${pages.port}/review`);
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    expect((await page.request.get(`http://localhost:${pages.port}/api/staff/review`)).status()).toBe(401);
  });
});
