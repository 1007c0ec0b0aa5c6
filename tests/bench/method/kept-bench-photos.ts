import { renderKept } from '../../phantom/render-kept';
import type { Phantom } from '../../phantom/render-phantom';
import type { BenchPhoto } from '../accuracy/bench-photos';
import { readTruth } from '../accuracy/common-truth';
import { benchSpec } from '../accuracy/fresh-phantoms';

/** The photos of `npm run bench -- accuracy SEED`, kept from run to run. */
export async function* keptBenchPhotos(seed: number, photos: number): AsyncGenerator<BenchPhoto> {
  const phantoms: Phantom[] = [];
  await renderKept(Array.from({ length: photos }, (_, i) => benchSpec(seed, i)), async (index, phantom) => void (phantoms[index] = phantom), 1);
  for (const [index, { jpeg, truth }] of phantoms.entries()) {
    const name = `phantom-${String(index).padStart(4, '0')}.jpg`;
    yield { name, file: jpeg, truth: readTruth(name, JSON.parse(JSON.stringify(truth))) };
  }
}
