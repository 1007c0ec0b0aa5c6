/** A warning sign waits for no analysis, no clock and no earlier word. No worker runs here. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Answers } from '../../lib/care/answers';
import { newId } from '../../lib/edges/db/new-id';
import { closeStore } from '../../lib/server/store';
import { checkInBody, newClientId, type Send, sendCheckIn } from './phone';
import { openLink } from './routes-in-process';
import { type TestClinic, testClinic, type TestPatient } from './test-clinic';

let clinic: TestClinic;
let patient: TestPatient;
let send: Send;
beforeEach(async () => {
  clinic = await testClinic();
  process.env.FOLDWATCH_DATA = clinic.folder;
  patient = await clinic.patient('one', 5);
  send = await openLink(patient.secret);
});
afterEach(async () => {
  await closeStore();
  await clinic.close();
});

const HOUR_MS = 3_600_000;
const hoursAgo = (hours: number) => new Date(Date.now() - hours * HOUR_MS).toISOString();
const say = (answers: Answers, at?: string) => sendCheckIn(send, newClientId(), checkInBody({ answers, ...(at ? { at } : {}) }));
const findings = async () => (await clinic.database.finding.findMany()).map(({ rule, level }) => `${rule} ${level}`);

const STREAK: Answers = { pain: 3, streaks: true };

it.each<Answers>([{ streaks: true }, { feverC: 38.4 }, { chills: true }, { confusion: true }, { dusky: true }, { boneVisible: true }])(
  'tells the person to call at once, and puts it before the clinic: %o',
  async (answers) => {
    expect((await say(answers)).callNow).toBe(true);
    expect((await findings()).filter((one) => one.endsWith(' now'))).toHaveLength(1);
  },
);

it('says nothing of the kind without one', async () => {
  expect((await say({ pain: 2, streaks: false, chills: false, feverC: 36.8 })).callNow).toBe(false);
  expect(await findings()).toEqual([]);
});

it('hears it from a phone whose clock is ahead', async () => {
  expect((await say(STREAK, hoursAgo(-0.2))).callNow).toBe(true);
  expect((await say(STREAK, hoursAgo(-20))).callNow).toBe(true);
});

it('hears it from a phone whose clock is years wrong', async () => {
  expect((await say(STREAK, '2019-01-01T00:00:00Z')).callNow).toBe(true);
  expect(await findings()).toEqual(['streak-or-fever now']);
});

it('hears it where it was offline, and somebody settled another sign meanwhile', async () => {
  await say(STREAK, hoursAgo(30));
  const resolution = { id: newId(), episodeId: patient.episodeId, findingId: null, rule: 'streak-or-fever', action: 'called', reason: 'Seen.', outcome: null, by: 'nurse' };
  await clinic.database.resolution.create({ data: { ...resolution, at: new Date() } });
  expect((await say({ pain: 2 })).callNow).toBe(false);
  expect((await say(STREAK, hoursAgo(4))).callNow).toBe(true);
});

it('goes on saying so until a person has looked', async () => {
  await say(STREAK);
  expect((await say({ pain: 2, streaks: false })).callNow).toBe(true);
});

it('keeps the answers where the rules themselves fail, and tells the person to call', async () => {
  // A plan that no program of ours wrote.
  await clinic.database.plan.create({ data: { id: newId(), episodeId: patient.episodeId, number: 2, json: '{"soaks":"often"}', madeAt: new Date() } });
  expect((await say({ pain: 2 })).callNow).toBe(true);
  expect(await clinic.database.checkIn.count()).toBe(1);
});
