/**
 * One process that analyses many photos in a row: `soak-probe.ts COUNT` prints its memory in MB after every tenth, as
 * JSON. Photos that are measured, refused and broken take turns, because each way out has to give back what it took.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { OWN_CARD } from '../../../lib/card/own-card';
import { analysisPorts } from '../../../lib/edges/analysis-ports';
import { analysePhoto, type AnalysisRequest } from '../../../lib/pipeline/analyse-photo';

const EVERY = 10;
const SAMPLES = path.resolve(import.meta.dirname, '../../../sample-images');
const filesOf = (folder: string): Buffer[] => readdirSync(path.join(SAMPLES, folder)).map((name) => readFileSync(path.join(SAMPLES, folder, name)));
const measured = filesOf('series');
const broken = measured[0].subarray(0, measured[0].length / 2);
const photos = [...measured, ...filesOf('refused').slice(0, 4), broken];

const ports = await analysisPorts();
const request: AnalysisRequest = {
  geometry: OWN_CARD,
  print: { scale: 1, relativeU: 0.005, confirmed: true },
  context: { receivedAt: null, knownSha256: new Set() },
};

const rssMb: number[] = [];
for (let n = 1; n <= Number(process.argv[2]); n++) {
  await analysePhoto(photos[n % photos.length], request, ports);
  if (n % EVERY > 0) continue;
  // What waits to be collected is no growth.
  globalThis.gc?.();
  rssMb.push(process.memoryUsage().rss / 2 ** 20);
}
console.log(JSON.stringify({ rssMb }));
