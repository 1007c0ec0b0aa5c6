/** The production build of the pages, built when there is none newer than its sources, and Debian's Chromium to open them. */
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, rmSync, statSync } from 'node:fs';
import net from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { chromium, type Browser } from 'playwright-core';
import { ROOT, treeFiles } from '../architecture/source-tree';

const CHROMIUM = '/usr/bin/chromium';
const NEXT = path.join(ROOT, 'node_modules', 'next', 'dist', 'bin', 'next');
const ENV = { ...process.env, NODE_ENV: 'production' as const, NEXT_TELEMETRY_DISABLED: '1' };

/** Says so where there is none, so that a skipped run is seen. */
export function hasChromium(): boolean {
  const there = existsSync(CHROMIUM);
  if (!there) console.warn(`Browser tests are skipped: there is no Chromium at ${CHROMIUM}.`);
  return there;
}

export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: CHROMIUM,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });

/** Longer than any build takes: a lock older than that was left behind. */
const STALE_MS = 240_000;

/** Test files run side by side; only one of them may build. */
async function oneAtATime(work: () => void): Promise<void> {
  const lock = path.join(tmpdir(), `foldwatch-build-${createHash('sha256').update(ROOT).digest('hex').slice(0, 12)}`);
  for (;;) {
    try {
      mkdirSync(lock);
      break;
    } catch {
      if (existsSync(lock) && Date.now() - statSync(lock).mtimeMs > STALE_MS) rmSync(lock, { recursive: true, force: true });
      await setTimeout(500);
    }
  }
  try {
    work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

function buildIfOlder(): void {
  const built = path.join(ROOT, '.next', 'BUILD_ID');
  const newest = ['app', 'lib', 'public'].flatMap((folder) => treeFiles(folder)).map((file) => statSync(path.join(ROOT, file)).mtimeMs);
  if (existsSync(built) && statSync(built).mtimeMs > Math.max(...newest)) return;
  const { status, stdout, stderr } = spawnSync(process.execPath, [NEXT, 'build'], { cwd: ROOT, env: ENV, encoding: 'utf8' });
  if (status !== 0) throw new Error(`The pages could not be built:\n${stdout}\n${stderr}`);
}

const freePort = () =>
  new Promise<number>((found) => {
    const probe = net.createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as net.AddressInfo;
      probe.close(() => found(port));
    });
  });

/** Serves them on a port of their own; what is given is added to the environment, such as where the data lies. */
export async function startPages(environment: Readonly<Record<string, string>> = {}): Promise<{ port: number; stop: () => void }> {
  await oneAtATime(buildIfOlder);
  const port = await freePort();
  const server: ChildProcess = spawn(process.execPath, [NEXT, 'start', '-p', String(port), '-H', '127.0.0.1'], { cwd: ROOT, env: { ...ENV, ...environment } });
  await new Promise<void>((ready, fail) => {
    server.stdout?.on('data', (text: Buffer) => String(text).includes('Ready') && ready());
    server.on('exit', (code) => fail(new Error(`The pages ended with ${code} before they were ready.`)));
  });
  return { port, stop: () => void server.kill() };
}
