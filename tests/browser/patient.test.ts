/**
 * The patient's journeys in a real browser against the production build, with a clinic's server of the test's own.
 * Photos are the checked-in samples; every person, name and number is made up.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { ROOT } from '../architecture/source-tree';
import { startFakeClinic, stateAfterHours, type FakeClinic } from './fake-clinic';
import { hasChromium, openBrowser, startPages } from './start-pages';

const sample = (name: string) => path.join(ROOT, 'sample-images', name);
const TOE = sample('measured/light-warm-led.jpg');
const PHONE = { viewport: { width: 360, height: 740 }, locale: 'en-GB', timezoneId: 'America/New_York' };

describe.skipIf(!hasChromium())('the patient at home', () => {
  let pages: { port: number; stop: () => void };
  let browser: Browser;
  let clinic: FakeClinic;
  let context: BrowserContext;
  let page: Page;
  const complaints: string[] = [];

  beforeAll(async () => {
    pages = await startPages();
    browser = await openBrowser();
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    pages?.stop();
  });
  beforeEach(async () => {
    clinic = await startFakeClinic(pages.port, stateAfterHours(5 * 24));
    context = await browser.newContext(PHONE);
    page = await newPage();
  });
  afterEach(async () => {
    await context.close();
    await clinic.close();
    expect(complaints.splice(0)).toEqual([]);
  });

  async function newPage(): Promise<Page> {
    const opened = await context.newPage();
    opened.setDefaultTimeout(15_000);
    opened.on('pageerror', ({ message }) => complaints.push(message));
    return opened;
  }
  const open = (where: string) => page.goto(clinic.url + where);
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
  const seen = (text: string | RegExp) => page.getByText(text).first().waitFor();
  const takePhoto = (file: string) => page.getByLabel('Take the photo').setInputFiles(file);
  const only = <Value>(map: Map<string, Value>): Value => {
    expect(map.size).toBe(1);
    return [...map.values()][0];
  };

  async function skipQuestions(from = 1) {
    for (let question = from; question < 6; question += 1) {
      await seen(`Question ${question} of 6`);
      await press('Next');
    }
    await seen('Question 6 of 6');
  }

  it('sends photo and answers, byte for byte, and says what was received and not how the toe does', async () => {
    await open('/today');
    await page.getByRole('heading', { name: 'Day 5' }).waitFor();
    await page.getByRole('link', { name: 'Start today’s check-in' }).click();
    await takePhoto(TOE);
    await seen('Got it. The photo can be read.');
    await press('Go on to the questions');
    await page.getByRole('radio', { name: '3' }).check();
    await press('Next');
    await page.getByRole('radio', { name: 'Damp' }).check();
    await page.getByRole('radio', { name: 'Yellow' }).check();
    await press('Next');
    await page.getByRole('radio', { name: 'No' }).check();
    await press('Next');
    await page.getByRole('textbox').fill('99.5');
    await press('Yes, that is 37.5 °C');
    await press('Next');
    await seen('Question 5 of 6');
    await press('Next');
    await page.getByRole('checkbox', { name: 'None of these' }).check();
    await page.getByRole('textbox').fill('It itches.');
    await press('Send');
    await page.getByRole('heading', { name: 'Your clinic has your check-in' }).waitFor();

    const photo = only(clinic.photos);
    expect(photo.bytes.equals(readFileSync(TOE))).toBe(true);
    expect(photo.kind).toBe('toe');
    expect(only(clinic.checkIns)).toMatchObject({
      kind: 'daily',
      hasPhoto: true,
      worry: 'It itches.',
      answers: { pain: 3, wetness: 'damp', dischargeColour: 'yellow', smell: false, feverC: 37.5, dusky: false, cold: false, boneVisible: false, numb: false },
    });
    // Not asked, or not answered, is absent.
    expect(Object.keys(only(clinic.checkIns).answers)).not.toContain('streaks');
    expect(await page.locator('body').innerText()).not.toMatch(/\b(normal|fine|healing well)\b/i);
  });

  it('keeps everything without network and sends it once there is network again', async () => {
    await open('/check-in');
    await page.getByLabel('Take the photo').waitFor({ state: 'attached' });
    await context.setOffline(true);
    await takePhoto(TOE);
    await seen('No network. Your photo is kept on this phone');
    await press('Go on to the questions');
    await skipQuestions();
    await press('Send');
    await seen('1 check-in is not sent yet');
    expect(clinic.checkIns.size).toBe(0);
    await context.setOffline(false);
    await page.getByRole('heading', { name: 'Your clinic has your check-in' }).waitFor();
    expect(only(clinic.photos).bytes.equals(readFileSync(TOE))).toBe(true);
  });

  it('goes on with a photo whose upload was cut, from where the server stands', async () => {
    // Phones write more behind the end of a JPEG; it makes this one four pieces long.
    const buffer = Buffer.concat([readFileSync(TOE), Buffer.alloc(800 * 1024, 7)]);
    clinic.cutPieces = 2;
    await open('/check-in');
    await page.getByLabel('Take the photo').setInputFiles({ name: 'toe.jpg', mimeType: 'image/jpeg', buffer });
    await seen('Got it. The photo can be read.');
    const offsets = clinic.asked.filter((line) => line.startsWith('PUT')).map((line) => Number(line.split('offset=')[1]));
    expect(offsets).toEqual([...offsets].sort((a, b) => a - b));
    expect(new Set(offsets).size).toBe(Math.ceil(buffer.length / (256 * 1024)));
    expect(only(clinic.photos).bytes.equals(buffer)).toBe(true);
  });

  it('restores photo, answers and step after the tab was killed', async () => {
    await open('/check-in');
    await takePhoto(TOE);
    await press('Go on to the questions');
    await page.getByRole('radio', { name: '6' }).check();
    await press('Next');
    await seen('Question 2 of 6');
    await page.close({ runBeforeUnload: false });
    page = await newPage();
    await open('/check-in');
    await seen('Question 2 of 6');
    await press('Back');
    expect(await page.getByRole('radio', { name: '6' }).isChecked()).toBe(true);
    await press('Back');
    await page.getByAltText('The photo you took').waitFor();
  });

  it('opens without network at all, by the page kept on the phone, which holds nothing about the person', async () => {
    await open('/today');
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await context.setOffline(true);
    await page.close();
    page = await newPage();
    await open('/check-in');
    await seen('You are offline');
    await takePhoto(TOE);
    await page.getByAltText('The photo you took').waitFor();
    const kept = await page.evaluate(async () => {
      const cache = await caches.open('shell-1');
      return Promise.all((await cache.keys()).map(async (request) => [new URL(request.url).pathname, await (await cache.match(request))?.text()]));
    });
    expect(kept.map(([where]) => where).filter((where) => where !== '/offline' && !where?.startsWith('/_next/static/'))).toEqual([]);
    expect(JSON.stringify(kept)).not.toContain(clinic.state.clinic.name);
    await context.setOffline(false);
  });

  it('is sent once when send is tapped three times', async () => {
    await open('/check-in');
    await press('I cannot take a photo now');
    await skipQuestions();
    await page.getByRole('button', { name: 'Send', exact: true }).evaluate((button: HTMLElement) => [1, 2, 3].forEach(() => button.click()));
    await page.getByRole('heading', { name: 'Your clinic has your check-in' }).waitFor();
    expect(only(clinic.checkIns).hasPhoto).toBe(false);
    expect(clinic.asked.filter((line) => line.startsWith('PUT'))).toHaveLength(1);
  });

  it.each([
    ['cardNotFound', 'refused/no-card.jpg', 'We cannot see the card.'],
    ['blur', 'refused/defocus.jpg', 'The picture is not sharp.'],
    ['wrongCard', 'refused/wrong-card.jpg', 'This is not your card.'],
  ])('says in one sentence what to change, and opens the camera again: %s', async (gate, file, sentence) => {
    const refused = readFileSync(sample(file));
    clinic.verdictOf = (photo) => (photo.equals(refused) ? { state: 'retake', gates: [gate] } : { state: 'gotIt' });
    await open('/check-in');
    await takePhoto(sample(file));
    await seen(sentence);
    await page.getByLabel('Take another photo').setInputFiles(TOE);
    await seen('Got it. The photo can be read.');
    expect(only(clinic.photos).bytes.equals(readFileSync(TOE))).toBe(true);
  });

  it('says whom to call as soon as a warning sign is ticked, with no network at all', async () => {
    await open('/check-in');
    await press('I cannot take a photo now');
    for (let question = 1; question < 5; question += 1) await press('Next');
    await context.setOffline(true);
    await page.getByRole('group', { name: 'Are there red lines running up from the toe?' }).getByRole('radio', { name: 'Yes' }).check();
    const advice = page.getByRole('alert').filter({ hasText: 'Call now' });
    await advice.waitFor();
    expect(await advice.getByRole('link', { name: 'Call 999 now' }).getAttribute('href')).toBe('tel:999');
    await context.setOffline(false);
  });

  it('asks for no photo while the dressing stays on, and has blood on the bandage before everything else', async () => {
    // In a zone in which it is noon now, five hours ago was the same day.
    const east = 12 - new Date().getUTCHours();
    clinic.state = stateAfterHours(5, { timeZone: `Etc/GMT${east > 0 ? '-' : '+'}${Math.abs(east)}` });
    await open('/today');
    await page.getByRole('heading', { name: 'The day of your nail operation' }).waitFor();
    const [first] = await page.getByRole('main').getByRole('link').allInnerTexts();
    expect(first).toBe('There is blood on the bandage');
    expect(await page.getByRole('link', { name: 'Start today’s check-in' }).count()).toBe(0);
    await page.getByRole('link', { name: 'Send a check-in now' }).click();
    await seen(/Leave the dressing on until .* Do not take it off for a photo/);
    expect(await page.getByLabel('Take the photo').count()).toBe(0);
    await press('Go on to the questions');
    await seen('Question 1 of 6');
  });

  it('says at the end that a photo cannot be measured, where it was not taken again', async () => {
    clinic.verdictOf = () => ({ state: 'retake', gates: ['blur'] });
    await open('/check-in');
    await takePhoto(TOE);
    await seen('The picture is not sharp.');
    await press('Go on to the questions');
    await skipQuestions();
    await press('Send');
    await page.getByRole('heading', { name: 'Your clinic has your check-in' }).waitFor();
    await seen('The computer cannot measure the photo. A person at the clinic will look at it.');
  });

  it('sends at once that blood still comes on the first day, with the photo of the dressing', async () => {
    clinic.state = stateAfterHours(5);
    await open('/today');
    await page.getByRole('link', { name: 'There is blood on the bandage' }).click();
    await press('There is blood on the bandage');
    await press('Start 20 minutes');
    await page.getByRole('timer').waitFor();
    await page.getByLabel('Add a photo of the bandage').setInputFiles(TOE);
    await seen('The photo of the bandage is kept');
    await press('I have pressed for 20 minutes already');
    await press('Yes, blood still comes');
    await page.getByRole('alert').getByText('Call now, and keep pressing').waitFor();
    await page.getByRole('heading', { name: 'Your clinic has your check-in' }).waitFor();
    expect(only(clinic.checkIns)).toMatchObject({ kind: 'firstDay', answers: { bleedingAfterPressure: true }, hasPhoto: true });
    expect(only(clinic.photos).kind).toBe('dressing');
  });

  it('has the emergency number first where blood runs, and says nothing of twenty minutes that nobody pressed', async () => {
    clinic.state = stateAfterHours(5);
    await open('/first-day');
    await press('There is blood on the bandage');
    await press('Blood runs or drips, or I feel faint');
    const advice = page.getByRole('alert').filter({ hasText: 'Call now, and keep pressing' });
    await advice.waitFor();
    expect((await advice.getByRole('link').allInnerTexts())[0]).toBe('Call 999 now');
    await page.getByRole('heading', { name: 'Your clinic has your check-in' }).waitFor();
    expect(only(clinic.checkIns)).toMatchObject({ kind: 'firstDay', answers: { bloodRuns: true } });
    expect(Object.keys(only(clinic.checkIns).answers)).toEqual(['bloodRuns']);
  });

  it('speaks Spanish where the clinic says so, and says so to screen readers', async () => {
    clinic.state = { ...clinic.state, language: 'es' };
    await open('/today');
    await page.getByRole('link', { name: 'Empezar el control de hoy' }).click();
    await page.getByRole('heading', { name: 'Primero, una foto de su dedo' }).waitFor();
    expect(await page.locator('html').getAttribute('lang')).toBe('es');
  });

  it('never sends a check-in under the link of another person', async () => {
    await open('/check-in');
    await seen('First, a photo of your toe');
    await context.setOffline(true);
    await press('I cannot take a photo now');
    await skipQuestions();
    await press('Send');
    await seen('1 check-in is not sent yet');
    clinic.state = stateAfterHours(48);
    await context.setOffline(false);
    await open('/today');
    await page.getByRole('heading', { name: 'Day 2' }).waitFor();
    await page.waitForTimeout(1_000);
    expect(clinic.checkIns.size).toBe(0);
  });

  it('moves the focus to each new question, and names every control', async () => {
    await open('/check-in');
    await press('I cannot take a photo now');
    await page.getByRole('heading', { name: 'How bad is the pain in your toe?' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('How bad is the pain in your toe?');
    expect(await page.getByRole('group', { name: 'How bad is the pain in your toe?' }).getByRole('radio').count()).toBe(11);
  });

  it.each(['light', 'dark'] as const)('has no accessibility violation on any screen, and none left undecided, in %s', async (colorScheme) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const judge = async () => {
      const { violations, incomplete } = await new AxeBuilder({ page }).analyze();
      // axe leaves undecided what stands on the drawn lines of millimetre paper, and single figures; the contrast test
      // of the tokens decides those: ink where two bold lines cross.
      const onLines = (data: unknown) => ['bgGradient', 'shortTextContent'].includes((data as { messageKey?: string } | null)?.messageKey ?? '');
      const undecided = incomplete.map((one) => ({ ...one, nodes: one.nodes.filter(({ any }) => !any.every(({ data }) => onLines(data))) }));
      const found = [...violations, ...undecided.filter(({ nodes }) => nodes.length > 0)].map(
        ({ id, nodes }) => `${page.url()} ${id}: ${nodes.map(({ target, any }) => `${target.join(' ')} ${JSON.stringify(any[0]?.data)}`).join(', ')}`,
      );
      expect(found).toEqual([]);
      const small = await page.locator('button, a, label:has(input), input[type=text]').evaluateAll((targets) =>
        targets.filter((one) => one.getClientRects().length > 0 && one.getBoundingClientRect().height < 44).map((one) => one.textContent),
      );
      expect(small).toEqual([]);
    };
    for (const where of ['/today', '/first-day', '/check-in']) {
      await open(where);
      await page.getByText('This page sends your photo').waitFor();
      await page.getByRole('heading').nth(0).waitFor();
      await judge();
    }
    await press('I cannot take a photo now');
    for (let question = 1; question <= 6; question += 1) {
      await seen(`Question ${question} of 6`);
      if (question === 2) await page.getByRole('radio', { name: 'Wet' }).check();
      if (question === 4) await page.getByRole('textbox').fill('101');
      if (question === 5) await page.getByRole('radio', { name: 'Yes' }).first().check();
      await judge();
      await press(question === 6 ? 'Send' : 'Next');
    }
    await page.getByRole('heading', { name: 'Your clinic has your check-in' }).waitFor();
    await judge();
  });
});
