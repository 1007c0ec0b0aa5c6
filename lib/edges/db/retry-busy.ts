import { setTimeout as wait } from 'node:timers/promises';

const LONGEST_PAUSE_MS = 250;

/** Another connection holds the write lock. The adapter reports SQLITE_BUSY as a time-out. */
function isBusy(error: unknown): boolean {
  const cause = (error as { cause?: { kind?: string; originalCode?: string } }).cause;
  return cause?.kind === 'SocketTimeout' || cause?.originalCode?.startsWith('SQLITE_BUSY') === true;
}

/**
 * Does it again while the database is busy, at uneven intervals so that waiting writers do not march in step. The
 * statement that met the lock has changed nothing, so doing it again is doing it once.
 */
export async function retryBusy<Result>(work: () => Promise<Result>, giveUpAfterMs: number): Promise<Result> {
  const begun = performance.now();
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error) || performance.now() - begun > giveUpAfterMs) throw error;
      await wait(Math.random() * Math.min(LONGEST_PAUSE_MS, 10 * 2 ** attempt));
    }
  }
}
