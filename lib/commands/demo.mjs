/** `npm run demo` on a fresh clone: installs and builds what is missing, then starts a clinic of our own invention. */
import { spawn, spawnSync } from 'node:child_process';
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

function ensureBuilt() {
  const made = path.join(ROOT, '.next', 'BUILD_ID');
  const isFresh = existsSync(made) && BUILT_FROM.every((part) => newest(path.join(ROOT, part)) <= statSync(made).mtimeMs);
  if (isFresh) return;
  console.log('Building the pages: this takes about half a minute, once.');
  const next = path.join(ROOT, 'node_modules', 'next', 'dist', 'bin', 'next');
  const built = spawnSync(process.execPath, [next, 'build'], { cwd: ROOT, encoding: 'utf8' });
  if (built.status === 0) return;
  console.error(`The pages could not be built:\n${built.stdout}${built.stderr}`);
  process.exit(built.status ?? 1);
}

ensureInstalled();
ensureClient();
ensureBuilt();
const demo = spawn(process.execPath, ['--import', 'tsx', path.join(import.meta.dirname, 'demo.ts')], { cwd: ROOT, stdio: 'inherit' });
// Ctrl-C reaches both; the one that started everything waits for the end.
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => demo.kill(signal));
demo.on('exit', (code) => {
  process.exitCode = code ?? 1;
});
