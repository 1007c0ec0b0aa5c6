/**
 * Plain JavaScript, for it runs before anything is installed: a fresh clone needs Node and nothing else.
 */
import { spawnSync } from 'node:child_process';
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
    .filter(([place, wanted]) => place !== '' && !wanted.optional && !wanted.devOptional && !wanted.link)
    .filter(([place, wanted]) => installed[place]?.version !== wanted.version)
    .map(([place]) => place);
}

/** Installs exactly what the lockfile says, if anything of it is missing; ends the program where that fails. */
export function ensureInstalled(root = ROOT) {
  const missing = missingPackages(root);
  if (missing.length === 0) return;
  console.log(`Installing: ${missing.length} of the packages in package-lock.json are missing or of another version.`);
  const { status, error } = spawnSync('npm', ['ci', '--no-fund', '--no-audit'], { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
  if (status === 0) return;
  console.error(`npm ci did not succeed (${error?.message ?? `exit code ${status}`}); the lines above say why.`);
  process.exit(status ?? 1);
}
