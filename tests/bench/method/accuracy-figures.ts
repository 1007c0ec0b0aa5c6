import { OWN_CARD } from '../../../lib/card/own-card';
import { printAccuracy } from '../accuracy/print-accuracy';
import { runAccuracy } from '../accuracy/run-accuracy';
import { summarise } from '../accuracy/summarise';
import { keptBenchPhotos } from './kept-bench-photos';

/** The same figures as `npm run bench -- accuracy SEED --photos N`. */
export async function accuracyFigures(seed: number, photos: number): Promise<object> {
  const scored = await runAccuracy(keptBenchPhotos(seed, photos), OWN_CARD);
  const summary = { seed, folder: null, ...summarise(scored.map(({ score }) => score)) };
  printAccuracy(summary, scored);
  return summary;
}
