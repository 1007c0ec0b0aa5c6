/**
 * `npm test`: installs what is missing, runs vitest with the arguments given, and closes with one plain line of counts
 * that any reader of logs understands. Plain JavaScript, for it runs before anything is installed.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ensureClient } from '../lib/commands/ensure-client.mjs';
import { ensureInstalled } from '../lib/commands/ensure-installed.mjs';
import { closingLine } from './closing-line.mjs';

const ROOT = path.resolve(import.meta.dirname, '..');

const driver = ensureInstalled();
ensureClient();
await driver;

const folder = mkdtempSync(path.join(tmpdir(), 'foldwatch-tests-'));
const report = path.join(folder, 'report.json');
const vitest = path.join(ROOT, 'node_modules', 'vitest', 'vitest.mjs');
const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
const { status } = spawnSync(process.execPath, [vitest, 'run', ...reporters, ...process.argv.slice(2)], {
  cwd: ROOT,
  stdio: ['ignore', 'inherit', 'inherit'],
});

try {
  console.log(closingLine(JSON.parse(readFileSync(report, 'utf8'))));
} catch (error) {
  console.error(`vitest left no report that can be counted: ${error.message}`);
}
rmSync(folder, { recursive: true, force: true });
process.exitCode = status ?? 1;
