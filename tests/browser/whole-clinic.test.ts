/** The same pages with the real server behind them: database, photo folder and rules, filled with the demonstration's made-up cases. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { patientStateSchema } from '../../lib/care/patient-contract';
import { ROOT } from '../architecture/source-tree';
import { hasChromium, openBrowser, startPages } from './start-pages';

const TOE = path.join(ROOT, 'sample-images', 'measured', 'light-warm-led.jpg');

describe.skipIf(!hasChromium())('a check-in at the whole clinic', () => {
  const data = mkdtempSync(path.join(tmpdir(), 'foldwatch-browser-'));
  let pages: { port: number; stop: () => void };
  let browser: Browser;
  let page: Page;
  let links: Map<string, string>;

  function command(name: string): string {
    const file = path.join(ROOT, 'lib', 'commands', `${name}.ts`);
    const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', file], {
      cwd: ROOT,
      env: { ...process.env, FOLDWATCH_DATA: data },
      encoding: 'utf8',
    });
    if (status !== 0) throw new Error(`${name} ended with ${status}: ${stderr}`);
    return stdout;
  }

  beforeAll(async () => {
    command('migrate');
    links = new Map([...command('seed').matchAll(/(HL-\d+).*?(\/p\/[\w-]+)/g)].map(([, caseCode, link]) => [caseCode, link]));
    pages = await startPages({ FOLDWATCH_DATA: data });
    browser = await openBrowser();
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    pages?.stop();
    rmSync(data, { recursive: true, force: true });
  });

  async function openLink(caseCode: string): Promise<void> {
    const context = await browser.newContext({ viewport: { width: 360, height: 740 }, locale: 'en-GB' });
    page = await context.newPage();
    page.setDefaultTimeout(15_000);
    await page.goto(`http://localhost:${pages.port}${links.get(caseCode)}`);
  }
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
  const stateNow = async () => patientStateSchema.parse(await (await page.request.get(`http://localhost:${pages.port}/api/patient/state`)).json());

  it('arrives from the personal link to the receipt, and is on the list of what was received', async () => {
    await openLink('HL-101');
    expect(new URL(page.url()).pathname).toBe('/today');
    await page.getByRole('link', { name: 'Start today’s check-in' }).click();
    const before = await stateNow();
    await page.getByLabel('Take the photo').setInputFiles(TOE);
    await press('Go on to the questions');
    for (let question = 1; question < 6; question += 1) {
      await page.getByText(`Question ${question} of 6`).waitFor();
      if (question === 5) await page.getByRole('radio', { name: 'Yes' }).first().check();
      await press('Next');
    }
    await page.getByText('Question 6 of 6').waitFor();
    const sentAt = Date.now();
    await press('Send');
    await page.getByRole('heading', { name: 'Your clinic has your check-in' }).waitFor();
    console.log(`From send to the receipt, with the rules' findings stored: ${Date.now() - sentAt} ms.`);
    expect((await stateNow()).received).toHaveLength(before.received.length + 1);
    await page.getByRole('alert').getByText('Call now').waitFor();
  });

  it('speaks Spanish to the one who reads Spanish', async () => {
    await openLink('HL-103');
    await page.getByRole('heading', { name: /^Día \d+$/ }).waitFor();
  });

  it('says that a link has ended, and shows nobody without one anything', async () => {
    await openLink('HL-101');
    await page.goto(`http://localhost:${pages.port}/p/${'x'.repeat(43)}`);
    await page.getByRole('heading', { name: 'This link does not open any more' }).waitFor();
    const stranger = await (await browser.newContext()).newPage();
    await stranger.goto(`http://localhost:${pages.port}/today`);
    await stranger.getByRole('heading', { name: 'Open your own link again' }).waitFor();
  });
});
