import { describe, expect, it } from 'vitest';
import { hasSharedData } from '../../shared-data';
import { asStandard, even, fitOn, meanDeltaE, odd } from './fit-chart';
import { CHART_PHOTOS, readChartCodes } from './locate-chart-patches';

describe.skipIf(!hasSharedData('colour'))('real photos of a 24-patch chart', () => {
  describe.each(CHART_PHOTOS)('$file', (photo) => {
    it('has patches nearer to their published colours where half of the other patches were fitted', async () => {
      const codes = await readChartCodes(photo);
      for (const [fitted, judged] of [[even, odd], [odd, even]]) {
        const before = meanDeltaE(judged, codes, asStandard);
        const after = meanDeltaE(judged, codes, fitOn(fitted, codes));
        console.info(`${photo.file}: mean ΔE00 of the unseen half ${before.toFixed(2)} before, ${after.toFixed(2)} after`);
        expect(after).toBeLessThan(before);
      }
    });
  });
});
