import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { OWN_CARD } from '../../../lib/card/own-card';
import { analysisPorts } from '../../../lib/edges/analysis-ports';
import { fillOpenCases } from '../../../lib/edges/db/fill-open-cases';
import { migrateDatabase } from '../../../lib/edges/db/migrate-database';
import { openDatabase } from '../../../lib/edges/db/open-database';
import { readEpisodeRows } from '../../../lib/edges/db/read-episode-rows';
import { startClinic } from '../../../lib/edges/db/start-clinic';
import { startStaff } from '../../../lib/edges/db/start-staff';
import { encodeView } from '../../../lib/edges/decode/encode-view';
import { viewPath } from '../../../lib/edges/files/photo-path';
import { readSettings } from '../../../lib/edges/env/settings';
import { analysePhoto } from '../../../lib/pipeline/analyse-photo';
import { analysisToJson } from '../../../lib/pipeline/analysis-json';
import { assessRows } from '../../../lib/server/assess-rows';
import { closeStore } from '../../../lib/server/store';
import { GET as getList } from '../../../app/api/staff/review/route';
import { GET as getPanel } from '../../../app/api/staff/review/[episodeId]/route';
import { signedIn } from '../../access/signed-in';
import { episodeName, isAtFullLength, PHOTOS_EACH, seedAssessments, seedClinic } from './seed-clinic';

const ROOT = path.resolve(import.meta.dirname, '..', '..', '..');
const SAMPLE = path.join(ROOT, 'sample-images', 'series', 'day-14.jpg');
const MANY = 10_000;
const FEW = 10;
/** So many cases are opened in the panel. */
const OPENED = 50;
const ROUNDS = 4;
const EACH_ROUND = 25;

interface Clinic {
  readonly folder: string;
  readonly cookie: string;
  /** Cases that are opened: as many photos as all others, with analyses of real length and a picture. */
  readonly opened: readonly string[];
}

interface Real {
  readonly analysis: string;
  readonly view: Uint8Array;
}

/** One real analysis with its picture: every photo of the bench has these. */
async function realAnalysis(): Promise<Real> {
  const file = new Uint8Array(await readFile(SAMPLE));
  const print = { scale: 1, relativeU: 0.005, confirmed: true };
  const context = { receivedAt: '2126-01-01T00:00:00Z', procedureAt: null, knownSha256: new Set<string>() };
  const result = await analysePhoto(file, { geometry: OWN_CARD, print, context }, await analysisPorts());
  if (!result.analysed) throw new Error(`${SAMPLE} cannot be analysed: ${result.refusal.id}.`);
  return { analysis: JSON.stringify(analysisToJson(result.analysis, 'photo')), view: await encodeView(file, result.analysis.photo, { maxLongEdgePx: 1600, quality: 82 }) };
}

async function makeClinic(folder: string, episodes: number, { analysis, view }: Real): Promise<Clinic> {
  const file = path.join(folder, 'foldwatch.sqlite');
  await migrateDatabase(file, path.join(ROOT, 'prisma', 'migrations'));
  const database = await openDatabase(file);
  const now = new Date();
  const words = { name: 'Bench Clinic', phone: '01632 960134', emergencyPhone: '112', openingHours: 'always', timeZone: 'Europe/London', language: 'en', asksBirthYear: false, reviewLimits: { now: 15, today: 240, soon: 1440, visit: 10080 } };
  const clinicId = await startClinic(database, words, now);
  await startStaff(database, { name: 'Nurse', role: 'nurse', email: 'nurse@bench.example', clinicId, passwordHash: '' }, now);
  const { id: staffId } = await database.staff.findFirstOrThrow();
  const cookie = await signedIn(staffId, { database, settings: readSettings({ FOLDWATCH_DATA: folder }) });
  const viewSha256 = createHash('sha256').update(view).digest('hex');
  const size = { file, clinicId, staffId, episodes, atFullLength: Math.min(OPENED, episodes), analysis, viewSha256, now };
  await seedClinic(size);
  await seedAssessments(file, JSON.stringify(assessRows(await readEpisodeRows(database, episodeName(0)), now).trend));
  await fillOpenCases(database, now);
  const opened = Array.from({ length: episodes }, (_, at) => at).filter((at) => isAtFullLength(at, size)).map(episodeName);
  for (const episodeId of opened) {
    const picture = viewPath(path.join(folder, 'photos'), { episodeId, sha256: viewSha256 });
    await mkdir(path.dirname(picture), { recursive: true });
    await writeFile(picture, view);
  }
  console.log(`${episodes} open episodes, ${await database.photo.count()} photos, ${await database.openCase.count()} cases on the list`);
  await database.$disconnect();
  return { folder, cookie, opened };
}

const request = (place: string, cookie: string): Request => new Request(`http://clinic.test/api/staff/review${place}`, { headers: { cookie } });

/** From the request to the last byte of the answer. */
async function timed(work: () => Promise<Response>): Promise<number> {
  const begun = performance.now();
  const response = await work();
  const text = await response.text();
  const ms = performance.now() - begun;
  if (response.status !== 200 || text.length < 100) throw new Error(`The bench was answered ${response.status}: ${text.slice(0, 200)}`);
  return ms;
}

interface Spans {
  readonly list: number[];
  readonly panel: number[];
}

/** A first round warms up and is not counted. */
async function runRound({ folder, cookie, opened }: Clinic, spans: Spans, round: number): Promise<void> {
  process.env.FOLDWATCH_DATA = folder;
  for (let at = 0; at < EACH_ROUND; at += 1) {
    const list = await timed(() => getList(request('', cookie)));
    const episodeId = opened[(round * EACH_ROUND + at) % opened.length];
    const panel = await timed(() => getPanel(request(`/${episodeId}`, cookie), { params: Promise.resolve({ episodeId }) }));
    if (round > 0) {
      spans.list.push(list);
      spans.panel.push(panel);
    }
  }
  await closeStore();
}

const p95 = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.ceil(values.length * 0.95) - 1];

/**
 * The review list and the panel beside it with 10,000 open episodes and 200,000 photos, and with 10 and 200, asked through
 * the program's own routes, in turns: `npm run bench -- list [--json FILE]`. Without the network and the browser.
 */
export async function listCommand(words: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...words], options: { json: { type: 'string' } } });
  const folder = await mkdtemp(path.join(os.tmpdir(), 'foldwatch-list-'));
  try {
    const real = await realAnalysis();
    const many = await makeClinic(path.join(folder, 'many'), MANY, real);
    const few = await makeClinic(path.join(folder, 'few'), FEW, real);
    const [ofMany, ofFew]: Spans[] = [{ list: [], panel: [] }, { list: [], panel: [] }];
    for (let round = 0; round <= ROUNDS; round += 1) {
      await runRound(few, ofFew, round);
      await runRound(many, ofMany, round);
    }
    const figures = {
      listP95Ms: p95(ofMany.list),
      panelP95Ms: p95(ofMany.panel),
      listRatio: p95(ofMany.list) / p95(ofFew.list),
      panelRatio: p95(ofMany.panel) / p95(ofFew.panel),
      listP95MsOf10: p95(ofFew.list),
      panelP95MsOf10: p95(ofFew.panel),
      openEpisodes: MANY,
      photos: MANY * PHOTOS_EACH,
    };
    console.log(`list   p95 ${figures.listP95Ms.toFixed(1)} ms, with 10 episodes ${figures.listP95MsOf10.toFixed(1)} ms: ratio ${figures.listRatio.toFixed(2)}`);
    console.log(`panel  p95 ${figures.panelP95Ms.toFixed(1)} ms, with 10 episodes ${figures.panelP95MsOf10.toFixed(1)} ms: ratio ${figures.panelRatio.toFixed(2)}`);
    if (values.json) await writeFile(values.json, `${JSON.stringify(figures, null, 1)}\n`);
  } finally {
    await closeStore();
    await rm(folder, { recursive: true, force: true });
  }
}
