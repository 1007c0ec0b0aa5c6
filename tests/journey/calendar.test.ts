/** The days of a plan, taken from the patient's own link into the phone's calendar. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { closeStore } from '../../lib/server/store';
import { openLink } from './routes-in-process';
import { type TestClinic, testClinic } from './test-clinic';

const DAYS_SINCE = 5;

let clinic: TestClinic;
beforeEach(async () => {
  clinic = await testClinic();
  process.env.FOLDWATCH_DATA = clinic.folder;
});
afterEach(async () => {
  await closeStore();
  await clinic.close();
});

it('holds the check-ins that are left of two weeks, and nothing once they are over', async () => {
  const send = await openLink((await clinic.patient('one', DAYS_SINCE)).secret);
  const answer = await send('/api/patient/calendar', {});
  expect(answer.headers.get('content-type')).toMatch(/^text\/calendar/);
  const entries = (await answer.text()).split('BEGIN:VEVENT').length - 1;
  // Today's counts until the evening.
  expect([14 - DAYS_SINCE, 14 - DAYS_SINCE + 1]).toContain(entries);

  const late = await openLink((await clinic.patient('two', 40)).secret);
  expect((await late('/api/patient/calendar', {})).status).toBe(204);
});
