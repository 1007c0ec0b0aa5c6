/** The method page in a real browser against the production build: by day and by night, on a phone and on a desk. */
import { mkdtempSync, rmSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { METHOD_VERSION } from '../../lib/pipeline/method-version';
import { ROOT } from '../architecture/source-tree';
import { hasChromium, openBrowser, startPages } from './start-pages';

const VIEWS = [
  { name: 'phone', viewport: { width: 360, height: 740 }, colorScheme: 'light' },
  { name: 'desk', viewport: { width: 1280, height: 800 }, colorScheme: 'dark' },
] as const;

describe.skipIf(!hasChromium())('the method page', () => {
  const data = mkdtempSync(path.join(tmpdir(), 'foldwatch-method-'));
  let pages: { port: number; stop: () => void };
  let browser: Browser;

  beforeAll(async () => {
    spawnSync(process.execPath, ['--import', 'tsx', path.join('lib', 'commands', 'migrate.ts')], { cwd: ROOT, env: { ...process.env, FOLDWATCH_DATA: data } });
    pages = await startPages({ FOLDWATCH_DATA: data });
    browser = await openBrowser();
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    pages?.stop();
    rmSync(data, { recursive: true, force: true });
  });

  it.each(VIEWS)('shows a stranger how it is measured, by $colorScheme on a $name', async ({ viewport, colorScheme }) => {
    const context = await browser.newContext({ viewport, colorScheme, locale: 'en-GB' });
    const page = await context.newPage();
    await page.goto(`http://127.0.0.1:${pages.port}/method`);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('How it is measured, and how well');
    expect(await page.getByText(/mm² ± [\d.]+ mm² \(k = 2\)/).count()).toBe(1);
    expect(await page.getByText(`method ${METHOD_VERSION}`).count()).toBeGreaterThan(0);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await context.close();
  });
});
