/**
 * A clinic of any size in a database file: each episode has twenty daily photos with their check-ins, analyses and jobs,
 * and findings of which most were resolved. Two of three cases have something open; one in fifty waits for a clinician, one in
 * forty has a newest photo that could not be measured. Written by SQL, for the program would take a day.
 */
import { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';
import { type Connection, statement } from '../../../lib/edges/db/connection';

export const PHOTOS_EACH = 20;

export interface ClinicSize {
  readonly file: string;
  readonly clinicId: string;
  readonly staffId: string;
  readonly episodes: number;
  /** So many episodes, spread over all, have analyses of real length; the others' are short, for space on the disk. */
  readonly atFullLength: number;
  /** JSON of one real analysis, and the picture that goes with it. */
  readonly analysis: string;
  readonly viewSha256: string;
  readonly now: Date;
}

/** Id of the episode with this number: `episodeName(7)` → 'e7'. */
export const episodeName = (number: number): string => `e${number}`;

/** Has this episode analyses of real length? */
export const isAtFullLength = (number: number, { episodes, atFullLength }: Pick<ClinicSize, 'episodes' | 'atFullLength'>): boolean => number % Math.max(1, Math.floor(episodes / atFullLength)) === 0;

const AT = "'%Y-%m-%dT%H:%M:%f+00:00'";
/** SQL of the moment so many days and hours before `now`, in the one form of all times. */
const before = (days: string, hours = '0'): string => `strftime(${AT}, t.now, printf('%+d days', -(${days})), printf('%+d hours', -(${hours})))`;

export async function seedClinic(size: ClinicSize): Promise<void> {
  const connection = await new PrismaBetterSQLite3({ url: `file:${size.file}`, fileMustExist: true }).connect();
  try {
    await connection.executeScript('PRAGMA synchronous = 0');
    await connection.executeScript('BEGIN IMMEDIATE');
    await writeRows(connection, size);
    await connection.executeScript('COMMIT');
    await connection.executeScript('PRAGMA wal_checkpoint(TRUNCATE)');
  } finally {
    await connection.dispose();
  }
}

async function writeRows(connection: Connection, { clinicId, staffId, episodes, atFullLength, analysis, viewSha256, now }: ClinicSize): Promise<void> {
  await connection.executeScript('CREATE TEMP TABLE t (now TEXT, clinicId TEXT, staffId TEXT, analysis TEXT, short TEXT, view TEXT)');
  const short = JSON.stringify({ ...(JSON.parse(analysis) as object), outlines: null, outlinesAsSeen: null, budget: {} });
  await connection.executeRaw(statement('INSERT INTO t VALUES (?, ?, ?, ?, ?, ?)', now.toISOString(), clinicId, staffId, analysis, short, viewSha256));
  await connection.executeScript(`CREATE TEMP TABLE e AS WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < ${episodes}) SELECT i, 'e' || i AS id, (i * 7) % 24 AS hour FROM n`);
  await connection.executeScript(`CREATE TEMP TABLE d AS WITH RECURSIVE n(j) AS (SELECT 1 UNION ALL SELECT j + 1 FROM n WHERE j < ${PHOTOS_EACH}) SELECT j, ${PHOTOS_EACH} - j AS ago FROM n`);
  const full = `e.i % ${Math.max(1, Math.floor(episodes / atFullLength))} = 0`;
  const retake = `(e.i % 40 = 3 AND d.j = ${PHOTOS_EACH})`;
  const photoId = "'p' || e.i || '-' || d.j";
  const clientId = "'c' || e.i || '-' || d.j";
  for (const sql of [
    `INSERT INTO Episode (id, clinicId, caseCode, timeZone, language, risks, linkTokenHash, linkEndsAt, madeAt, assessAt)
      SELECT e.id, t.clinicId, 'LB-' || (1000 + e.i), 'Europe/London', 'en', CASE WHEN e.i % 7 = 0 THEN '["diabetes"]' ELSE '[]' END, 'hash ' || e.i, ${before('-100')}, ${before('21', 'e.hour')}, ${before('-1')} FROM e, t`,
    `INSERT INTO Procedure (episodeId, at, matricectomy, treatedSides, stripMm, edge, recordedAt) SELECT e.id, ${before('21', 'e.hour')}, 'phenol60', '["lateral"]', 3, 'whole', ${before('21', 'e.hour')} FROM e, t`,
    `INSERT INTO Plan (id, episodeId, number, json, madeAt) SELECT 'plan' || e.i, e.id, 1, '{}', ${before('21')} FROM e, t`,
    `INSERT INTO CheckIn (id, episodeId, clientId, kind, at, receivedAt, answers, worry, hasPhoto, bodySha256, callNow)
      SELECT 'k' || e.i || '-' || d.j, e.id, ${clientId}, 'daily', ${before('d.ago', 'e.hour')}, ${before('d.ago', 'e.hour')}, '{"pain":3,"wetness":"damp","dischargeColour":"clear","dischargeConsistency":"watery","smell":false}', NULL, 1, ${clientId}, 0 FROM e, d, t`,
    `INSERT INTO Photo (id, episodeId, clientId, sha256, kind, lengthBytes, receivedAt) SELECT ${photoId}, e.id, ${clientId}, 'hash ' || e.i || '-' || d.j, 'toe', 2500000, ${before('d.ago', 'e.hour')} FROM e, d, t`,
    `INSERT INTO Analysis (id, photoId, methodVersion, outcome, gates, json, viewSha256, finishedAt)
      SELECT 'a' || e.i || '-' || d.j, ${photoId}, '0.2.0', CASE WHEN ${retake} THEN 'retake' ELSE 'measured' END, CASE WHEN ${retake} THEN '["blur"]' ELSE '[]' END,
        CASE WHEN ${full} THEN t.analysis ELSE t.short END, t.view, ${before('d.ago', 'e.hour')} FROM e, d, t`,
    `INSERT INTO Job (photoId, state, attempts, madeAt, finishedAt) SELECT ${photoId}, 'done', 1, ${before('d.ago', 'e.hour')}, ${before('d.ago', 'e.hour')} FROM e, d, t`,
    `INSERT INTO AuditEvent (id, clinicId, episodeId, actor, action, rule, at) SELECT 'u' || e.i || '-' || d.j, t.clinicId, e.id, 'patient:' || e.id, 'checkIn.send', 'patient may checkIn.send (own)', ${before('d.ago', 'e.hour')} FROM e, d, t`,
    // Four findings each, one every five days; the newest two stand open in two and in one of three cases.
    `CREATE TEMP TABLE f AS SELECT e.i, e.id AS episodeId, d.j, e.hour, CASE d.j % 4 WHEN 0 THEN 'spreading' WHEN 1 THEN 'purulent' WHEN 2 THEN 'stalled' ELSE 'pain-rising' END AS rule,
      CASE WHEN d.j < 4 AND e.i % 97 = 0 THEN 'now' WHEN d.j % 4 = 0 THEN 'today' WHEN d.j % 4 = 3 THEN 'visit' ELSE 'soon' END AS level,
      CASE d.j WHEN 1 THEN 0 WHEN 2 THEN 3 WHEN 3 THEN 9 ELSE 14 END AS ago FROM e, d WHERE d.j <= 4`,
    `INSERT INTO Finding (id, episodeId, rule, level, ruleBookVersion, json, fingerprint, foundAt)
      SELECT 'f' || f.i || '-' || f.j, f.episodeId, f.rule, f.level, '2026.3',
        json_object('rule', f.rule, 'level', f.level, 'at', strftime('%Y-%m-%dT%H:%M:%fZ', ${before('f.ago', 'f.hour')}), 'sentence', 'Reach grew 3.1 mm in 41 h, smallest change we can see is 1.2 mm.',
          'evidence', json('{"numbers":[],"photos":[],"checkIns":[]}'), 'ruleBookVersion', '2026.3', 'raisedForRisk', json('false'), 'closed', NULL), 'print ' || f.j, ${before('f.ago', 'f.hour')} FROM f, t`,
    `INSERT INTO Resolution (id, episodeId, findingId, rule, action, reason, by, at)
      SELECT 'r' || f.i || '-' || f.j, f.episodeId, 'f' || f.i || '-' || f.j, f.rule, 'called', 'Spoke with the patient, comes tomorrow.', 'nurse:' || t.staffId, ${before('f.ago', 'f.hour - 1')}
      FROM f, t WHERE f.j > (f.i % 3)`,
    `INSERT INTO Resolution (id, episodeId, findingId, rule, action, reason, by, at)
      SELECT 'q' || f.i, f.episodeId, 'f' || f.i || '-1', f.rule, 'askClinician', 'Is this the usual course?', 'nurse:' || t.staffId, ${before('0', '0')} FROM f, t WHERE f.j = 1 AND f.i % 50 = 1`,
  ]) {
    await connection.executeScript(sql);
  }
}

/** The same two assessments for everybody: their length counts, not what they say. */
export async function seedAssessments(file: string, trend: string): Promise<void> {
  const connection = await new PrismaBetterSQLite3({ url: `file:${file}`, fileMustExist: true }).connect();
  try {
    await connection.executeScript('PRAGMA synchronous = 0');
    for (const days of ['5', '0']) {
      const sql = `INSERT INTO Assessment (id, episodeId, ruleBookVersion, findings, trend, madeAt) SELECT 's${days}' || id, id, '2026.3', '[]', ?, strftime(${AT}, 'now', '-${days} days') FROM Episode`;
      await connection.executeRaw(statement(sql, trend));
    }
    await connection.executeScript('PRAGMA wal_checkpoint(TRUNCATE)');
    await connection.executeScript('ANALYZE');
  } finally {
    await connection.dispose();
  }
}
