import { expect, it } from 'vitest';
import { runSoak } from '../../bench/soak/run-soak';

/** Three hundred take minutes (`npm run bench -- soak`); what leaks a frame per photo shows in sixty. */
const PHOTOS = 60;
/** One forgotten frame of these small photos per analysis would come to 1.6. */
const MOST_GROWTH = 1.15;

it('needs no more memory after sixty photos, refused and broken ones among them, than after twenty', async () => {
  const { growth } = await runSoak(PHOTOS);
  expect(growth).toBeLessThan(MOST_GROWTH);
}, 300_000);
