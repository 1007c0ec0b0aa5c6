/**
 * The real web server and a real worker are killed without warning thirty times while photos come in over a phone that
 * does not give up. Whatever the phone was told is safe must be there, whole, and worked on once.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { buildProgram } from '../../lib/commands/build-program';
import { seededRandom } from '../seeded-random';
import { ROOT } from '../architecture/source-tree';
import { startPages } from '../browser/start-pages';
import { checkInBody, newClientId, type Send, sendCheckIn, sendPhoto } from './phone';
import { samplePhoto, sha256Of, type TestClinic, testClinic, type TestPatient } from './test-clinic';

const KILLS = 30;
const PHONES = 3;
const SAMPLES = ['refused/no-card.jpg', 'measured/light-shade.jpg', 'refused/defocus.jpg'] as const;
const chance = seededRandom(20260301);

let clinic: TestClinic;
let patient: TestPatient;
let origin: string;
const running: KeptRunning[] = [];

/** A process that is started again as soon as it ends, whatever ended it. */
class KeptRunning {
  #child: ChildProcess | null = null;
  #stopped = false;
  starts = 0;

  constructor(
    private readonly words: readonly string[],
    private readonly environment: NodeJS.ProcessEnv,
  ) {
    this.#start();
  }

  #start(): void {
    if (this.#stopped) return;
    this.starts += 1;
    this.#child = spawn(process.execPath, this.words, { cwd: ROOT, env: this.environment, stdio: 'ignore' });
    this.#child.on('exit', () => this.#start());
  }

  kill(): void {
    this.#child?.kill('SIGKILL');
  }

  stop(): void {
    this.#stopped = true;
    this.kill();
  }
}

beforeAll(async () => {
  clinic = await testClinic();
  patient = await clinic.patient('one', 2);
  // Builds the pages where they are older than their sources, and finds a free port.
  const pages = await startPages({ FOLDWATCH_DATA: clinic.folder });
  pages.stop();
  await wait(500);
  origin = `http://127.0.0.1:${pages.port}`;
  const environment = { ...process.env, NODE_ENV: 'production' as const, FOLDWATCH_DATA: clinic.folder, FOLDWATCH_LEASE_SECONDS: '5' };
  const next = path.join(ROOT, 'node_modules', 'next', 'dist', 'bin', 'next');
  running.push(new KeptRunning([next, 'start', '-p', String(pages.port), '-H', '127.0.0.1'], environment));
  running.push(new KeptRunning([await buildProgram(path.join('lib', 'commands', 'worker-loop.ts'))], environment));
}, 300_000);
afterAll(async () => {
  for (const one of running) one.stop();
  await wait(200);
  await clinic.close();
});

/** Again and again until it works: what a phone does on a bad network. */
async function until<Result>(work: () => Promise<Result>): Promise<Result> {
  for (;;) {
    try {
      return await work();
    } catch {
      await wait(100);
    }
  }
}

async function openLink(): Promise<Send> {
  const opened = await until(async () => {
    const response = await fetch(`${origin}/p/${patient.secret}`, { redirect: 'manual' });
    if (response.status !== 303) throw new Error(`The link was answered ${response.status}.`);
    return response;
  });
  const [cookie] = (opened.headers.get('set-cookie') ?? '').split(';');
  return async (address, init) => {
    const response = await fetch(origin + address, { ...init, headers: { ...(init.headers as Record<string, string>), cookie, origin } });
    answers += 1;
    return response;
  };
}

/** Answers that the phone has got from the web server. */
let answers = 0;

/** Until it holds, but no longer than ten seconds: a process that has not come up yet may be killed too. */
async function untilTrue(holds: () => boolean | Promise<boolean>): Promise<void> {
  for (const begun = performance.now(); performance.now() - begun < 10_000 && !(await holds()); ) await wait(20);
}

/** The web server is killed while pieces come in, the worker while it has a photo; each at any point of that. */
async function killThirtyTimes(): Promise<void> {
  const [web, worker] = running;
  for (let kills = 0; kills < KILLS; kills += 2) {
    const before = answers;
    await untilTrue(() => answers > before);
    await wait(chance() * 600);
    web.kill();
    await untilTrue(async () => (await clinic.database.job.count({ where: { state: 'running', leaseEndsAt: { gt: new Date() } } })) > 0);
    await wait(chance() * 600);
    worker.kill();
  }
}

it(
  'loses nothing that was confirmed, and works on everything once',
  async () => {
    const send = await openLink();
    let killing = true;
    const killer = killThirtyTimes().finally(() => (killing = false));
    const confirmed: { clientId: string; sha256: string }[] = [];
    const sendOneAfterTheOther = async (phone: number) => {
      for (let at = phone; killing; at += PHONES) {
        const [clientId, photo] = [newClientId(), samplePhoto(SAMPLES[at % SAMPLES.length], at * 7)];
        await until(() => sendPhoto(send, clientId, photo));
        confirmed.push({ clientId, sha256: sha256Of(photo) });
        const body = checkInBody({ hasPhoto: true });
        await until(() => sendCheckIn(send, clientId, body));
      }
    };
    await Promise.all([killer, ...Array.from({ length: PHONES }, (_, phone) => sendOneAfterTheOther(phone))]);

    const { database, folder } = clinic;
    const isDone = async () => (await database.job.count({ where: { state: { not: 'done' } } })) === 0;
    for (let waited = 0; !(await isDone()) && waited < 120; waited += 1) await wait(1000);

    const photos = await database.photo.findMany({ include: { analyses: true, job: true } });
    expect(photos.map(({ clientId, sha256 }) => `${clientId} ${sha256}`).sort()).toEqual(confirmed.map(({ clientId, sha256 }) => `${clientId} ${sha256}`).sort());
    expect(photos.filter(({ analyses, job }) => analyses.length !== 1 || job?.state !== 'done')).toEqual([]);
    const whole = path.join(folder, 'photos', 'whole', patient.episodeId);
    const files = readdirSync(whole).filter((name) => !name.endsWith('.part'));
    expect(files.filter((name) => sha256Of(readFileSync(path.join(whole, name))) !== name)).toEqual([]);
    expect(files).toEqual(expect.arrayContaining(confirmed.map(({ sha256 }) => sha256)));
    const checkIns = await database.checkIn.findMany({ select: { clientId: true } });
    expect(checkIns.map(({ clientId }) => clientId).sort()).toEqual(confirmed.map(({ clientId }) => clientId).sort());
    expect(await database.$queryRawUnsafe('PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }]);
    const again = photos.filter(({ job }) => (job?.attempts ?? 0) > 1).length;
    const given = photos.filter(({ analyses: [analysis] }) => analysis.outcome === 'unread').length;
    console.info(`${KILLS} kills (web ${running[0].starts - 1}, worker ${running[1].starts - 1}): ${confirmed.length} photos, ${again} begun again, ${given} given up`);
  },
  600_000,
);
