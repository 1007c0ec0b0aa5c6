/** `npm run demo` on a fresh clone: installs and builds what is missing, then starts a clinic of our own invention. */
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { ensureClient } from './ensure-client.mjs';
import { ensureInstalled } from './ensure-installed.mjs';

const ROOT = path.resolve(import.meta.dirname, '..', '..');
const BUILT_FROM = ['app', 'lib', 'public', 'proxy.ts', 'next.config.ts', 'package-lock.json', 'tsconfig.json'];

/** When anything below was last written. */
function newest(place) {
  const found = statSync(place);
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(0, ...readdirSync(place).map((name) => newest(path.join(place, name))));
}

async function ensureBuilt() {
  const made = path.join(ROOT, '.next', 'BUILD_ID');
  const isFresh = existsSync(made) && BUILT_FROM.every((part) => newest(path.join(ROOT, part)) <= statSync(made).mtimeMs);
  if (isFresh) return;
  console.log('Building the pages: this takes about half a minute, once.');
  const next = path.join(ROOT, 'node_modules', 'next', 'dist', 'bin', 'next');
  // Not waited for in one piece: the database driver may still be compiled beside it.
  const build = spawn(process.execPath, [next, 'build'], { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
  let words = '';
  for (const stream of [build.stdout, build.stderr]) stream.on('data', (text) => (words += text));
  const status = await new Promise((ended) => build.on('close', ended));
  if (status === 0) return;
  console.error(`The pages could not be built:\n${words}`);
  process.exit(status ?? 1);
}

const driver = ensureInstalled();
ensureClient();
await ensureBuilt();
await driver;
const demo = spawn(process.execPath, ['--import', 'tsx', path.join(import.meta.dirname, 'demo.ts')], { cwd: ROOT, stdio: 'inherit' });
// Ctrl-C reaches both; the one that started everything waits for the end.
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => demo.kill(signal));
demo.on('exit', (code) => {
  process.exitCode = code ?? 1;
});
