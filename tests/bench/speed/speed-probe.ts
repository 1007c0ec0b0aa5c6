/** One process of the speed bench: `speed-probe.ts PHOTO timed` or `speed-probe.ts PHOTO many N`; prints JSON. */
import { readFileSync } from 'node:fs';
import { median } from 'd3-array';
import sharp from 'sharp';
import { OWN_CARD } from '../../../lib/card/own-card';
import { analysisPorts } from '../../../lib/edges/analysis-ports';
import { type CardLook, findCard, quickLook } from '../../../lib/rectify/find-card';
import { neededPart } from '../../../lib/rectify/needed-part';
import { LINEAR_LIGHT } from '../../../lib/rectify/linear-light';
import { toeGrid } from '../../../lib/rectify/toe-grid';
import { resampleMap } from '../../../lib/rectify/resample-map';
import { analysePhoto, type AnalysisRequest } from '../../../lib/pipeline/analyse-photo';
import type { AnalysisPorts } from '../../../lib/pipeline/ports';

/** A worker analyses two hundred photos in its life; the first ten teach the compiler which functions matter. */
const WARM_RUNS = 10;
const ROUNDS = 5;
const COUNTED_EACH_ROUND = 5;
/** Levels of an eight-bit picture. */
const LEVELS = 256;
const [photo, mode, count] = process.argv.slice(2);
const file = readFileSync(photo);
const ports = await analysisPorts();
const request: AnalysisRequest = {
  geometry: OWN_CARD,
  print: { scale: 1, relativeU: 0.005, confirmed: true },
  context: { receivedAt: null, knownSha256: new Set() },
};

const analysed = await analysePhoto(file, request, ports);
if (!analysed.analysed || !analysed.analysis.measurement) throw new Error('The bench photo was not measured.');

if (mode === 'many') {
  const start = performance.now();
  for (let i = 0; i < Number(count); i++) await analysePhoto(file, request, ports);
  console.log(JSON.stringify({ seconds: (performance.now() - start) / 1000, peakMb: process.resourceUsage().maxRSS / 1024 }));
} else {
  for (let i = 0; i < WARM_RUNS; i++) await analysePhoto(file, request, ports);
  const decode: number[] = [];
  const analysis: number[] = [];
  const same: number[] = [];
  // In short blocks in turn, so that a slow moment of the machine falls on all alike. The first of a block is not counted: it
  // sweeps up the whole pictures that the block before left behind, which no worker has lying about.
  for (let round = 0; round < ROUNDS; round++) {
    decode.push(...(await block(async () => void (await sharp(file).raw().toBuffer()))));
    analysis.push(...(await block(async () => void (await analysePhoto(file, request, ports)))));
    same.push(...(await block(() => sameSteps(ports))));
  }
  console.log(
    JSON.stringify({
      decodeMs: median(decode),
      analysisMs: median(analysis),
      sameStepsMs: median(same),
    }),
  );
}

/** What the native chain does as well: decode, find, rectify, threshold. */
async function sameSteps({ decodePhoto, detectFiducials }: AnalysisPorts): Promise<void> {
  const glances: CardLook[] = [];
  const decoded = await decodePhoto(file, (copy) => {
    glances.push(quickLook(copy, OWN_CARD, detectFiducials));
    return neededPart(glances[0], OWN_CARD);
  });
  if (!decoded.decoded) throw new Error(decoded.refusal.sentence);
  const search = findCard(decoded.photo, OWN_CARD, detectFiducials, glances[0]);
  if (!search.found) throw new Error('The card was not found.');
  const map = resampleMap(decoded.photo, search.fit.imageFromCard, toeGrid(OWN_CARD), { red: LINEAR_LIGHT, green: LINEAR_LIGHT, blue: LINEAR_LIGHT });
  thresholdOtsu(map.green);
}

/** A level between two classes of light (Otsu 1979, IEEE Trans SMC 9:62), and the mask above it: what the native chain asks OpenCV for. */
function thresholdOtsu(light: Float32Array): Uint8Array {
  const counts = new Float64Array(LEVELS);
  const codes = new Uint8Array(light.length);
  for (let i = 0; i < light.length; i++) {
    codes[i] = Math.min(LEVELS - 1, light[i] * (LEVELS - 1));
    counts[codes[i]]++;
  }
  const all = counts.reduce((sum, count, code) => sum + count * code, 0);
  let [best, level, below, belowSum] = [-1, 0, 0, 0];
  for (let code = 0; code < LEVELS - 1; code++) {
    below += counts[code];
    belowSum += counts[code] * code;
    const above = light.length - below;
    if (below === 0 || above === 0) continue;
    const between = below * above * (belowSum / below - (all - belowSum) / above) ** 2;
    if (between > best) [best, level] = [between, code];
  }
  const mask = new Uint8Array(light.length);
  for (let i = 0; i < mask.length; i++) mask[i] = codes[i] > level ? 1 : 0;
  return mask;
}

async function block(work: () => Promise<void>): Promise<number[]> {
  const times: number[] = [];
  for (let i = 0; i <= COUNTED_EACH_ROUND; i++) times.push(await timed(work));
  return times.slice(1);
}

async function timed(work: () => Promise<void>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
