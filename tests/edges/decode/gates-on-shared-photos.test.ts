/** The gates that need no card, on photos made by others: nothing here was used to choose a limit. */
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { decodePhoto } from '../../../lib/edges/decode/decode-photo';
import { gatesBeforeCard } from '../../../lib/photo/gates-before-card';
import { hasSharedData, sharedFile } from '../../shared-data';

const CARDLESS_GATES = new Set(['notAPhotograph', 'captureTime', 'duplicate']);
/** The phantoms say 2026-03-02, the odd ones 2019 and 2031. */
const receivedAt = '2026-11-25T08:00:00Z';

const picturesIn = (...folder: string[]): string[] =>
  readdirSync(sharedFile(...folder))
    .filter((name) => /\.(jpe?g|png|heic|heif)$/.test(name))
    .sort()
    .map((name) => sharedFile(...folder, name));

async function failedGates(file: string, knownSha256: Set<string>): Promise<string[] | null> {
  const result = await decodePhoto(new Uint8Array(readFileSync(file)));
  if (!result.decoded) return null;
  const gates = gatesBeforeCard(result.photo, { receivedAt, knownSha256 });
  knownSha256.add(result.photo.sha256);
  return gates.map(({ gate }) => gate);
}

const phantoms = hasSharedData('toe-phantoms');

describe.skipIf(!phantoms)('phantom photos of toes', () => {
  it.each(['accuracy', 'gates', 'negatives', 'repeatability', 'series'])(
    'fail exactly the gate that was broken on purpose, where it needs no card: %s',
    async (set) => {
      const known = new Set<string>();
      for (const file of picturesIn('toe-phantoms', set)) {
        const truth = JSON.parse(readFileSync(file.replace(/\.jpg$/, '.truth.json'), 'utf8')) as { expectedGate: string | null };
        const expected = truth.expectedGate !== null && CARDLESS_GATES.has(truth.expectedGate) ? [truth.expectedGate] : [];
        expect(await failedGates(file, known), path.basename(file)).toEqual(expected);
      }
    },
  );
});

const skin = hasSharedData('skin');
const others = ['decode', 'colour', 'markers'].filter(hasSharedData);

describe('real photos', () => {
  it.skipIf(!skin)('of skin, wounds and nails are never taken for drawings', async () => {
    for (const folder of ['fingernail', 'foot_ulcer']) {
      for (const file of picturesIn('skin', folder, 'images')) {
        expect(await failedGates(file, new Set()), path.basename(file)).not.toContain('notAPhotograph');
      }
    }
  });

  it.skipIf(others.length === 0)('of other things are never taken for drawings; a drawn flag is', async () => {
    for (const file of others.flatMap((folder) => picturesIn(folder))) {
      const gates = await failedGates(file, new Set());
      if (gates === null) continue;
      const drawn = path.basename(file) === 'png16_rgb_flag.png';
      expect(gates.includes('notAPhotograph'), path.basename(file)).toBe(drawn);
    }
  });
});
