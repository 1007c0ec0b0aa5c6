import { mean } from 'd3-array';
import { asStandard, even, fitOn, meanDeltaE, odd } from '../../known-answers/colour/fit-chart';
import { CHART_PHOTOS, readChartCodes } from '../../known-answers/colour/locate-chart-patches';
import type { OutsideRow, OutsideTable } from './outside-table';

/** Chart photos: colours from one half of the patches, judged on the other half, both ways round. */
export async function chartPhotos(): Promise<OutsideTable> {
  const rows: OutsideRow[] = [];
  for (const photo of CHART_PHOTOS) {
    const codes = await readChartCodes(photo);
    const halves = [[even, odd], [odd, even]] as const;
    const before = mean(halves, ([, judged]) => meanDeltaE(judged, codes, asStandard)) as number;
    const after = mean(halves, ([fitted, judged]) => meanDeltaE(judged, codes, fitOn(fitted, codes))) as number;
    rows.push({ name: photo.file, verdict: after < before ? 'found' : 'wrong', figure: Number(after.toFixed(2)), note: `${before.toFixed(2)} as the camera gave it` });
  }
  return {
    kind: 'chart photos',
    figure: 'mean ΔE00 of the patches that were not fitted',
    worse: 'higher',
    assumed: 'patch places read off by eye; reference values are nominal, editions differ by 1.7 ΔE00 in the mean',
    rows,
    facts: { meanDeltaE00: Number((mean(rows, ({ figure }) => figure as number) as number).toFixed(2)) },
  };
}
