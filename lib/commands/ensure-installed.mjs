/**
 * Plain JavaScript, for it runs before anything is installed: a fresh clone needs Node and nothing else.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

const ROOT = path.resolve(import.meta.dirname, '..', '..');

/** What a lockfile lists, by place: `{ 'node_modules/zod': { version } }`; empty where there is no such file. */
function packagesOf(lockfile) {
  return existsSync(lockfile) ? JSON.parse(readFileSync(lockfile, 'utf8')).packages : {};
}

/** Places where the lockfile wants another version than is installed. Optional ones depend on the machine. */
export function missingPackages(root = ROOT) {
  const installed = packagesOf(path.join(root, 'node_modules', '.package-lock.json'));
  return Object.entries(packagesOf(path.join(root, 'package-lock.json')))
    .filter(([place, wanted]) => place !== '' && !wanted.optional && !wanted.os && !wanted.cpu && !wanted.link)
    .filter(([place, wanted]) => installed[place]?.version !== wanted.version)
    .map(([place]) => place);
}

/** The one part that is compiled: SQLite, with its driver. */
const DRIVER = 'better-sqlite3';

/** Is the database driver compiled? Packages can be there without it, where an installation was broken off. */
export function isDriverBuilt(root = ROOT) {
  return existsSync(path.join(root, 'node_modules', DRIVER, 'build', 'Release', 'better_sqlite3.node'));
}

/**
 * Installs exactly what the lockfile says, if anything of it is missing; ends the program where that fails. Compiling the
 * database driver takes as long as all the rest and one core, so it goes on by itself: the promise answers when it is there.
 */
export function ensureInstalled(root = ROOT) {
  const missing = missingPackages(root);
  if (missing.length > 0) {
    console.log(`Installing: ${missing.length} of the packages in package-lock.json are missing or of another version.`);
    const { status, error } = spawnSync('npm', ['ci', '--ignore-scripts', '--no-fund', '--no-audit'], { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
    if (status !== 0) stop('npm ci', error?.message ?? `exit code ${status}`, status);
  }
  return isDriverBuilt(root) ? Promise.resolve() : buildDriver(root);
}

async function buildDriver(root) {
  const building = spawn('npm', ['rebuild', DRIVER, '--foreground-scripts'], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
  let words = '';
  for (const stream of [building.stdout, building.stderr]) stream.on('data', (text) => (words += text));
  const status = await new Promise((ended) => {
    building.on('error', (error) => ended(error.message));
    building.on('close', ended);
  });
  if (status === 0 && isDriverBuilt(root)) return;
  console.error(words);
  stop(`npm rebuild ${DRIVER}`, `exit code ${status}`, status);
}

function stop(command, why, status) {
  console.error(`${command} did not succeed (${why}); the lines above say why.`);
  process.exit(Number(status) || 1);
}
