import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { OWN_CARD } from '../../lib/card/own-card';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { analysePhoto } from '../../lib/pipeline/analyse-photo';
import { METHOD_VERSION } from '../../lib/pipeline/method-version';
import type { Measurand } from '../../lib/measure/measure-input';

const SAMPLES = path.resolve(import.meta.dirname, '..', '..', 'sample-images');
const PHOTOS = ['measured/light-warm-led.jpg', 'measured/brown-daylight.jpg', 'series/day-14.jpg'];
const KEPT: readonly Measurand[] = ['erythemaArea', 'reach', 'grooveWidth', 'rawArea'];

export interface GoldenFigures {
  readonly methodVersion: string;
  readonly photos: Readonly<Record<string, Readonly<Record<string, number | string>>>>;
}

/** What this version of the method answers on a few sample photos. */
export async function goldenFigures(): Promise<GoldenFigures> {
  const ports = await analysisPorts();
  const photos: Record<string, Record<string, number | string>> = {};
  for (const name of PHOTOS) {
    const context = { receivedAt: null, knownSha256: new Set<string>() };
    const result = await analysePhoto(await readFile(path.join(SAMPLES, name)), { geometry: OWN_CARD, print: { scale: 1, relativeU: 0.005, confirmed: true }, context }, ports);
    if (!result.analysed || !result.analysis.measurement) throw new Error(`${name} was not measured`);
    const { measurements } = result.analysis.measurement;
    photos[name] = Object.fromEntries(KEPT.map((key) => {
      const one = measurements[key];
      return [key, 'value' in one ? Number(one.value.toFixed(4)) : one.notMeasured];
    }));
  }
  return { methodVersion: METHOD_VERSION, photos };
}
