/** Renders what it is sent. Plain JavaScript that loads the TypeScript, because a worker starts without a loader. */
import { parentPort } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

register();
const { renderPhantom } = await import('./render-phantom.ts');

parentPort.on('message', async ({ index, spec }) => {
  try {
    parentPort.postMessage({ index, phantom: await renderPhantom(spec) });
  } catch (error) {
    parentPort.postMessage({ index, problem: error instanceof Error ? error.message : String(error) });
  }
});
