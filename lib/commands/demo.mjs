/** `npm run demo` on a fresh clone: installs what is missing, then measures the sample photos. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { ensureInstalled } from './ensure-installed.mjs';

ensureInstalled();
const demo = path.join(import.meta.dirname, 'demo.ts');
const { status } = spawnSync(process.execPath, ['--import', 'tsx', demo], { stdio: 'inherit' });
process.exitCode = status ?? 1;
