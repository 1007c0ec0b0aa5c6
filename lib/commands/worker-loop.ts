/** One worker process: photos and due assessments in turn, until it is told to stop or has worked long enough. */
import { randomUUID } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import { analysisPorts } from '../edges/analysis-ports';
import { readSettings } from '../edges/env/settings';
import { logEvent } from '../edges/log/log-event';
import { closeStore, store } from '../server/store';
import { workOnAssessment } from '../server/work-on-assessment';
import { workOnPhoto, type Worker } from '../server/work-on-photo';

const IDLE_MS = 150;
/** Memory that pictures have taken comes back only when the process ends. */
const PHOTOS_PER_PROCESS = 200;

const { leaseMs } = readSettings();
let stopping = false;
const stop = () => {
  stopping = true;
};
process.on('SIGTERM', stop);
process.on('SIGINT', stop);
// Whoever started it is gone.
process.on('disconnect', stop);

const [open, ports] = await Promise.all([store(), analysisPorts()]);
const worker: Worker = { id: randomUUID(), leaseMs, ports };

/** Work that never ends is ended with its process, before somebody else takes the job. */
async function withinLease(work: Promise<boolean>): Promise<boolean> {
  const tooLong = setTimeout(() => {
    logEvent('workerHangs', { workerId: worker.id });
    process.exit(70);
  }, leaseMs * 0.9);
  try {
    return await work;
  } finally {
    clearTimeout(tooLong);
  }
}

logEvent('workerReady', { workerId: worker.id });
for (let photos = 0; !stopping && photos < PHOTOS_PER_PROCESS; ) {
  const hadPhoto = await withinLease(workOnPhoto(open, worker));
  const hadAssessment = await withinLease(workOnAssessment(open));
  if (hadPhoto) photos += 1;
  if (!hadPhoto && !hadAssessment) await wait(IDLE_MS);
}
await closeStore();
process.exit(0);
