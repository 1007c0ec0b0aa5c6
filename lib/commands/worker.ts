/** `npm run worker`: keeps one worker process running. Pictures from outside are opened there and nowhere else. */
import { type ChildProcess, fork } from 'node:child_process';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { logEvent } from '../edges/log/log-event';
import { buildProgram } from './build-program';
import { WORKER_ENVIRONMENT } from './worker-environment';

const RESTART_PAUSE_MS = 500;
const loop = await buildProgram(path.join('lib', 'commands', 'worker-loop.ts'));

let running: ChildProcess | null = null;
let stopping = false;
for (const signal of ['SIGTERM', 'SIGINT'] as const) {
  process.on(signal, () => {
    stopping = true;
    running?.kill('SIGTERM');
  });
}

function runOnce(): Promise<number | string> {
  return new Promise((resolve) => {
    running = fork(loop, { execArgv: [], env: { ...process.env, ...WORKER_ENVIRONMENT } });
    running.on('exit', (code, signal) => resolve(code ?? signal ?? 1));
  });
}

while (!stopping) {
  const ended = await runOnce();
  if (ended === 0) continue;
  logEvent('workerEnded', { ended });
  await wait(RESTART_PAUSE_MS);
}
