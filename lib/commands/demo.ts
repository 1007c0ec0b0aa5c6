/** Makes a database of its own, fills it with the demo clinic, and starts web and worker over it. Begins anew each time. */
import { type ChildProcess, spawn } from 'node:child_process';
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { migrateDatabase } from '../edges/db/migrate-database';
import { openDatabase } from '../edges/db/open-database';
import { readSettings } from '../edges/env/settings';
import { CAUTION } from './caution';
import { freePort } from './free-port';
import { DEMO_PASSWORD, DEMO_STAFF } from './demo-cases';
import { type DemoLink, seedDemo } from './seed-demo';

const ROOT = path.resolve(import.meta.dirname, '..', '..');
const STARTS_WITHIN_MS = 30_000;

process.env.FOLDWATCH_DATA = path.join(ROOT, 'out', 'demo');
const settings = readSettings();

async function seed(): Promise<DemoLink[]> {
  await rm(path.dirname(settings.databaseFile), { recursive: true, force: true });
  await migrateDatabase(settings.databaseFile, path.join(ROOT, 'prisma', 'migrations'));
  const database = await openDatabase(settings.databaseFile);
  const links = await seedDemo(database, settings.photoFolder, new Date());
  await database.$disconnect();
  return links;
}

function start(name: string, words: readonly string[]): ChildProcess {
  const child = spawn(process.execPath, words, { cwd: ROOT, stdio: ['ignore', 'ignore', 'inherit'] });
  child.on('exit', (code) => stopAll(code === 0 ? 0 : 1, `${name} has ended.`));
  return child;
}

const children: ChildProcess[] = [];
let stopping = false;

function stopAll(code: number, why: string): void {
  if (stopping) return;
  stopping = true;
  process.exitCode = code;
  console.log(why);
  for (const child of children) child.kill('SIGTERM');
}

for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => stopAll(0, 'Stopping.'));

async function photosWaiting(origin: string): Promise<number> {
  const response = await fetch(`${origin}/api/health`);
  if (!response.ok) throw new Error(`The web server answers ${response.status}.`);
  return ((await response.json()) as { photosWaiting: number }).photosWaiting;
}

async function untilUp(origin: string): Promise<void> {
  for (const begun = Date.now(); !stopping; await wait(200)) {
    const isUp = await photosWaiting(origin).then(
      () => true,
      () => false,
    );
    if (isUp) return;
    if (Date.now() - begun > STARTS_WITHIN_MS) throw new Error('The web server does not answer.');
  }
}

async function untilWorkedOn(origin: string): Promise<void> {
  for (let before = -1; !stopping; await wait(1000)) {
    const waiting = await photosWaiting(origin);
    if (waiting !== before) console.log(waiting > 0 ? `  ${waiting} photos still to be measured` : '  All photos have been worked on.');
    if (waiting === 0) return;
    before = waiting;
  }
}

const links = await seed();
const port = await freePort(Number(process.env.PORT ?? 3000));
const origin = `http://localhost:${port}`;
children.push(start('The web server', [path.join('node_modules', 'next', 'dist', 'bin', 'next'), 'start', '-p', String(port)]));
children.push(start('The worker', ['--import', 'tsx', path.join('lib', 'commands', 'worker.ts')]));
try {
  await untilUp(origin);
  console.log(`\nHeron Lane Foot Clinic is invented, and so are its patients. Their links, as on the aftercare sheet:\n`);
  for (const { caseCode, about, secret } of links) console.log(`  ${caseCode}  ${about}\n          ${origin}/p/${secret}`);
  console.log(`\nIts staff sign in at ${origin}/sign-in with the password ${DEMO_PASSWORD}:\n`);
  for (const { role, name, email } of DEMO_STAFF) console.log(`  ${email}  ${name}, ${role}`);
  console.log(`\n${CAUTION}\nCtrl-C ends it.\n`);
  await untilWorkedOn(origin);
} catch (error) {
  stopAll(1, error instanceof Error ? error.message : String(error));
}
