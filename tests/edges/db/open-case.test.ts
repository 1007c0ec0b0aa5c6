/** The narrow rows of the review list against the slow way: all findings of the clinic read anew and put in order. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Finding, Level, RuleId } from '../../../lib/decide/finding';
import { addFindings } from '../../../lib/edges/db/add-finding';
import { closeEpisode, reopenEpisode } from '../../../lib/edges/db/close-episode';
import { fillOpenCases } from '../../../lib/edges/db/fill-open-cases';
import { finishJob } from '../../../lib/edges/db/finish-job';
import { keepCheckIn } from '../../../lib/edges/db/keep-check-in';
import { keepPhotoRow } from '../../../lib/edges/db/keep-photo-row';
import { keepResolution } from '../../../lib/edges/db/keep-resolution';
import { renewDueCases } from '../../../lib/edges/db/open-case';
import type { Queries } from '../../../lib/edges/db/open-database';
import { openFindings } from '../../../lib/edges/db/open-findings';
import { countOpenCases, reviewRows } from '../../../lib/edges/db/review-rows';
import { orderQueue } from '../../../lib/review/order-queue';
import type { OpenFinding } from '../../../lib/review/place-case';
import { MADE_AT, type TestDatabase, testClinic, testDatabase, testEpisode } from './test-database';

const HOUR_MS = 3_600_000;
const EPISODES = 14;
/** Few, so that the cut is in the test. */
const MOST = 6;

/** Numbers without pattern, the same on every machine (Park and Miller 1988: 16807 mod 2^31 − 1). */
function drawsFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 16807) % 2147483647;
    return Math.floor((state / 2147483647) * below);
  };
}

let test: TestDatabase;
let clinicId: string;
const episodes: string[] = [];

beforeAll(async () => {
  test = await testDatabase();
  clinicId = await testClinic(test.database);
  const otherId = await testClinic(test.database, { name: 'Other Clinic' });
  for (let at = 0; at < EPISODES; at += 1) episodes.push(await testEpisode(test.database, clinicId, `OC-${at}`));
  episodes.push(await testEpisode(test.database, otherId, 'XX-1'));
});
afterAll(() => test.close());

/** As the list was made before there were such rows: every finding, resolution and photo of the clinic. */
async function slowly(queries: Queries, now: Date, answersQuestions: boolean): Promise<{ order: string[]; findings: Map<string, string[]> }> {
  const since = new Date(now.getTime() - 14 * 24 * HOUR_MS);
  const open = await queries.$queryRaw<OpenFinding[]>`
    SELECT f.id, f.episodeId, f.rule, f.level, json_extract(f.json, '$.at') AS at, strftime('%Y-%m-%dT%H:%M:%fZ', f.foundAt) AS foundAt
    FROM Episode e JOIN Finding f ON f.episodeId = e.id
    WHERE e.clinicId = ${clinicId} AND (e.closedAt IS NULL OR f.foundAt > e.closedAt) AND json_extract(f.json, '$.closed') IS NULL
      AND NOT EXISTS (SELECT 1 FROM Resolution r WHERE r.episodeId = f.episodeId AND r.rule = f.rule AND r.action <> 'askClinician' AND r.at >= f.foundAt)
      AND NOT (f.rule = 'silent' AND EXISTS (SELECT 1 FROM CheckIn c WHERE c.episodeId = f.episodeId AND c.receivedAt > f.foundAt))
      AND NOT (f.rule = 'dry' AND EXISTS (SELECT 1 FROM Finding w WHERE w.episodeId = f.episodeId AND w.rule = 'relapse' AND w.foundAt >= f.foundAt))
    UNION ALL
    SELECT p.id, p.episodeId, 'photo-not-measured', 'retake', strftime('%Y-%m-%dT%H:%M:%fZ', a.finishedAt), strftime('%Y-%m-%dT%H:%M:%fZ', a.finishedAt)
    FROM Analysis a JOIN Photo p ON p.id = a.photoId JOIN Episode e ON e.id = p.episodeId
    WHERE a.outcome = 'retake' AND a.finishedAt > ${since} AND p.kind = 'toe' AND e.clinicId = ${clinicId} AND e.closedAt IS NULL
      AND NOT EXISTS (SELECT 1 FROM Photo n WHERE n.episodeId = p.episodeId AND n.kind = 'toe' AND n.receivedAt > p.receivedAt)
      AND NOT EXISTS (SELECT 1 FROM Resolution r WHERE r.episodeId = p.episodeId AND r.rule = 'photo-not-measured' AND r.action <> 'askClinician' AND r.at >= a.finishedAt)`;
  const words = await queries.resolution.findMany({ orderBy: { at: 'asc' } });
  const last = new Map(words.map((word) => [word.episodeId, word]));
  const askedAt = new Map([...last].filter(([, { action }]) => action === 'askClinician').map(([id, { at }]) => [id, at.toISOString()]));
  const queue = orderQueue(open, { limits: { now: 15, today: 240 }, now: now.toISOString(), askedAt, answersQuestions });
  return { order: queue.map(({ episodeId }) => episodeId), findings: new Map(queue.map(({ episodeId, first, others }) => [episodeId, [first, ...others].map(({ id }) => id).sort()])) };
}

async function expectSame(now: Date): Promise<void> {
  await renewDueCases(test.database, now);
  for (const answersQuestions of [false, true]) {
    const wanted = await slowly(test.database, now, answersQuestions);
    const rows = await reviewRows(test.database, { clinicId, answersQuestions, most: MOST }, now);
    expect(rows.map(({ episodeId }) => episodeId)).toEqual(wanted.order.slice(0, MOST));
    expect(await countOpenCases(test.database, clinicId)).toBe(wanted.order.length);
    for (const { episodeId, findings } of rows) {
      const kept = (JSON.parse(findings) as OpenFinding[]).map(({ id }) => id);
      expect(kept).toEqual(expect.arrayContaining(wanted.findings.get(episodeId) ?? []));
    }
  }
}

const RULES: readonly RuleId[] = ['spreading', 'silent', 'dry', 'relapse', 'late', 'cannot-judge', 'bleeding', 'purulent'];
const LEVELS: readonly Level[] = ['now', 'today', 'soon', 'visit'];

/** Something that happens to a case. */
async function happen(what: number, episodeId: string, at: Date, draw: (below: number) => number): Promise<void> {
  const { database } = test;
  const clientId = `c${at.getTime()}`;
  const sha256 = at.getTime().toString(16).padStart(64, '0');
  const finding = (): Finding => ({
    rule: RULES[draw(RULES.length)],
    level: LEVELS[draw(LEVELS.length)],
    at: new Date(at.getTime() - draw(30) * HOUR_MS).toISOString(),
    sentence: 'Reach grew 3.1 mm in 41 h.',
    evidence: { numbers: [], photos: [], checkIns: [] },
    ruleBookVersion: '2026.3',
    raisedForRisk: false,
    closed: draw(6) === 0 ? { at: at.toISOString(), by: 'rule', reason: 'said so' } : null,
  });
  await database.$transaction(async (queries) => {
    if (what <= 3) await addFindings(queries, episodeId, [finding(), finding()], at);
    if (what === 4) await keepCheckIn(queries, { episodeId, clientId, kind: 'daily', at: at.toISOString(), answers: '{}', worry: null, hasPhoto: false, bodySha256: sha256 }, at, false);
    if (what === 5 || what === 6) await keepPhotoRow(queries, { episodeId, clientId, sha256, kind: draw(5) === 0 ? 'dressing' : 'toe', lengthBytes: 1 }, at);
    if (what === 9) {
      const { closedAt } = await queries.episode.findUniqueOrThrow({ where: { id: episodeId } });
      if (closedAt === null) await closeEpisode(queries, episodeId, [], { found: 'seen', answers: [] }, 'clinician:a', { at, linkEndsAt: at });
      else await reopenEpisode(queries, episodeId, 'red again', 'clinician:a', { at, linkEndsAt: at });
    }
    if (what === 7 || what === 8) {
      const open = await openFindings(queries, episodeId, at);
      const action = (['called', 'askClinician', 'nothingNeeded', 'askClinician'] as const)[draw(4)];
      await keepResolution(queries, episodeId, open, { action, reason: 'because', message: null, dryness: null, leavesOpen: action === 'askClinician' }, 'nurse:a', at);
    }
  });
  if (what !== 6) return;
  const photo = await database.photo.findFirstOrThrow({ where: { episodeId, sha256 } });
  const outcome = draw(3) === 0 ? 'measured' : 'retake';
  await finishJob(database, photo, { methodVersion: '0', outcome, gates: ['blur'], json: null, viewSha256: null, findings: [] }, new Date(at.getTime() + 1000));
}

it.each([1, 2, 3])('are at every moment what the slow way says, whatever happens to the cases (%i)', async (seed) => {
  const draw = drawsFrom(seed * 7919);
  let at = MADE_AT.getTime() + seed * 1000 * 24 * HOUR_MS;
  for (let step = 0; step < 60; step += 1) {
    // Now and then weeks go by: photos that could not be measured leave the list by themselves.
    at += (draw(15) === 0 ? 10 * 24 : 1) * HOUR_MS + draw(900) * 1000;
    await happen(draw(10), episodes[draw(episodes.length)], new Date(at), draw);
    if (step % 4 === 0) await expectSame(new Date(at + 2000));
  }
  await expectSame(new Date(at + 40 * 24 * HOUR_MS));
});

it('are made for a database that has none yet', async () => {
  const now = new Date(MADE_AT.getTime() + 5000 * 24 * HOUR_MS);
  await test.database.openCase.deleteMany();
  await fillOpenCases(test.database, now);
  expect(await countOpenCases(test.database, clinicId)).toBeGreaterThan(5);
  await expectSame(now);
});
