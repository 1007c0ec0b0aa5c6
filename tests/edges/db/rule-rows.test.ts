/** What the rules read of an episode is little, and they say the same of it as of the whole. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { dueAssessment } from '../../../lib/edges/db/due-assessment';
import { type AnalysisWords, finishJob } from '../../../lib/edges/db/finish-job';
import { keepPhotoRow } from '../../../lib/edges/db/keep-photo-row';
import { type EpisodeRows, readEpisodeRows } from '../../../lib/edges/db/read-episode-rows';
import { readRuleRows, type RuleRows } from '../../../lib/edges/db/read-rule-rows';
import { assessRows } from '../../../lib/server/assess-rows';
import { episodeJson } from '../../../lib/server/episode-json';
import { MADE_AT, type TestDatabase, testClinic, testDatabase, testEpisode } from './test-database';

const HOUR_MS = 3_600_000;
const afterHours = (hours: number): Date => new Date(MADE_AT.getTime() + hours * HOUR_MS);

let test: TestDatabase;
let whole: EpisodeRows;
let narrow: RuleRows;

/** Outlines make up most of an analysis: 1,500 points of two numbers each. */
const ring = Array.from({ length: 1500 }, (_, place) => [20 * Math.cos(place / 240), 20 * Math.sin(place / 240)]);
const COLOUR = { itaDeg: 33.10000000000001, itaClass: 'light', contrastToNoise: 1 / 3, patches: ring.slice(0, 30) };

async function photo(place: number, episodeId: string, more: { outcome?: AnalysisWords['outcome']; colour?: object | null }) {
  const { outcome = 'measured', colour = COLOUR } = more;
  const at = afterHours(24 * place + 2);
  const sha256 = String.fromCharCode(97 + place).repeat(64);
  await keepPhotoRow(test.database, { episodeId, clientId: `00000000-0000-4000-8000-0000000000${10 + place}`, sha256, kind: 'toe', lengthBytes: 1 }, at);
  const { id } = await test.database.photo.findFirstOrThrow({ where: { sha256 } });
  const value = 2 + place + 1 / 7;
  const reach = { value, u: 0.4 + 1e-15, U: 0.8, unit: 'mm' };
  const json = outcome === 'unread' ? null : { measured: outcome === 'measured', colour, measurements: { reach, erythemaArea: { notMeasured: 'contrastTooLow' } }, outlines: ring };
  const gates = outcome === 'retake' ? ['blur'] : [];
  await finishJob(test.database, { id, episodeId }, { methodVersion: 'test', outcome, gates, json, viewSha256: null, findings: [] }, at);
  return id;
}

beforeAll(async () => {
  test = await testDatabase();
  const episodeId = await testEpisode(test.database, await testClinic(test.database), 'FW-1');
  for (const place of [1, 2, 3, 4, 5, 8, 9]) await photo(place, episodeId, {});
  await photo(6, episodeId, { outcome: 'retake', colour: null });
  await photo(7, episodeId, { outcome: 'held' });
  await photo(10, episodeId, { outcome: 'unread' });
  const redrawn = await photo(11, episodeId, {});
  for (const number of [1, 2]) {
    const measurements = JSON.stringify({ reach: { value: 15 + number, u: 0.3, U: 0.6, unit: 'mm' } });
    await test.database.outlineVersion.create({ data: { id: `v${number}`, photoId: redrawn, number, methodVersion: 'test', outlines: JSON.stringify(ring), measurements, madeBy: 'staff', reason: 'drawn', madeAt: afterHours(270) } });
  }
  whole = await readEpisodeRows(test.database, episodeId);
  narrow = await readRuleRows(test.database, episodeId);
});
afterAll(() => test.close());

it('is the same episode to the digit', () => {
  const at = afterHours(300).toISOString();
  const episode = episodeJson(narrow, at);
  expect(episode).toEqual(episodeJson(whole, at));
  expect(episode.checkIns.map((one) => one.photo?.itaDeg ?? null)).toEqual([...Array<number>(5).fill(COLOUR.itaDeg), null, COLOUR.itaDeg, COLOUR.itaDeg, null, COLOUR.itaDeg]);
  expect(episode.checkIns.at(-1)?.photo?.measurements?.reach).toMatchObject({ value: 17 });
});

it('has the same findings and the same trend', () => {
  const said = assessRows(narrow, afterHours(300));
  expect(said).toEqual(assessRows(whole, afterHours(300)));
  expect(said.findings.map(({ rule }) => rule)).toContain('spreading');
});

it('takes less than a twentieth of the text, also where the worker asks', async () => {
  const lengthOf = ({ photos }: RuleRows) => JSON.stringify(photos).length;
  const due = await dueAssessment(test.database, afterHours(300));
  expect(due).toEqual(narrow);
  expect(lengthOf(narrow)).toBeLessThan(lengthOf(whole) / 20);
});
