/** Many phantoms at once, on worker threads; results come in the order of the specs. */
import { Worker } from 'node:worker_threads';
import type { PhantomSpec } from './phantom-spec';
import type { Phantom } from './render-phantom';

const WORKER = new URL('./render-worker.mjs', import.meta.url);

interface Reply {
  readonly index: number;
  readonly phantom?: Phantom;
  readonly problem?: string;
}

/** One worker's life: it takes the next spec whenever it is free. */
function work(specs: readonly PhantomSpec[], next: () => number, keep: (index: number, phantom: Phantom) => void | Promise<void>): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(WORKER);
    const feed = (): void => {
      const index = next();
      if (index < specs.length) worker.postMessage({ index, spec: specs[index] });
      else void worker.terminate().then(() => resolve());
    };
    worker.on('error', reject);
    worker.on('message', ({ index, phantom, problem }: Reply) => {
      if (phantom === undefined) {
        reject(new Error(`renderMany: spec ${index} (seed ${specs[index].seed}) failed: ${problem}`));
        void worker.terminate();
        return;
      }
      Promise.resolve(keep(index, phantom)).then(feed, reject);
    });
    feed();
  });
}

/** Hands each finished phantom to `keep`, so that a thousand of them need not fit into memory. */
export async function renderEach(
  specs: readonly PhantomSpec[],
  keep: (index: number, phantom: Phantom) => void | Promise<void>,
  workers = 2,
): Promise<void> {
  let taken = 0;
  const next = (): number => taken++;
  await Promise.all(Array.from({ length: Math.min(workers, specs.length) }, () => work(specs, next, keep)));
}

/** All phantoms of a short list. */
export async function renderMany(specs: readonly PhantomSpec[], workers = 2): Promise<Phantom[]> {
  const phantoms: Phantom[] = [];
  await renderEach(specs, (index, phantom) => void (phantoms[index] = phantom), workers);
  return phantoms;
}
