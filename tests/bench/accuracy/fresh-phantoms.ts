import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { LIGHT_NAMES } from '../../phantom/light/light-spectra';
import { faultSpec } from '../../phantom/fault-spec';
import { FAULT_KINDS, type PhantomSpec } from '../../phantom/phantom-spec';
import { randomSpec } from '../../phantom/random-spec';
import { renderEach } from '../../phantom/render-many';
import { SKIN_CLASSES } from '../../phantom/skin/skin-class';
import { type BenchPhoto, photosInFolder } from './bench-photos';

/** One photo in so many has no redness at all; one in so many has a fault. */
const NO_REDNESS_EVERY = 7;
const FAULT_EVERY = 5;

/**
 * Phantoms nobody has seen: skin classes and lights in turn, so that each gets its share, everything else by chance.
 * They are kept in a folder of the system's temporary place while the bench runs.
 */
export async function* freshPhantoms(seed: number, photos: number): AsyncGenerator<BenchPhoto> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'foldwatch-phantoms-'));
  try {
    const specs = Array.from({ length: photos }, (_, i) => benchSpec(seed, i));
    await renderEach(specs, async (index, { jpeg, truth }) => {
      const name = path.join(folder, `phantom-${String(index).padStart(4, '0')}`);
      await writeFile(`${name}.jpg`, jpeg);
      await writeFile(`${name}.truth.json`, JSON.stringify(truth));
      if (process.stderr.isTTY) process.stderr.write(`\r\x1b[Krendered ${index + 1} of ${photos}`);
    });
    yield* photosInFolder(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The spec of one photo of a bench run. `benchSpec(1, 0)` */
export function benchSpec(seed: number, i: number): PhantomSpec {
  const own = seed * 100_003 + i;
  if (i % FAULT_EVERY === FAULT_EVERY - 1) {
    const kinds = FAULT_KINDS.filter((kind) => kind !== 'duplicate');
    return faultSpec(kinds[Math.floor(i / FAULT_EVERY) % kinds.length], own);
  }
  const skinClass = SKIN_CLASSES[i % SKIN_CLASSES.length];
  const light = LIGHT_NAMES[Math.floor(i / SKIN_CLASSES.length) % LIGHT_NAMES.length];
  const overrides = { skinClass, light: { key: light } };
  return randomSpec(own, i % NO_REDNESS_EVERY === 3 ? { ...overrides, wound: { redness: [] } } : overrides);
}
