/** Earlier visits of one toe have their say in where the margin of the next lies; single photos are measured as before. */
import { beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../lib/card/own-card';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { analysePhoto } from '../../lib/pipeline/analyse-photo';
import { type AnalysisJson, analysisToJson } from '../../lib/pipeline/analysis-json';
import type { Analysis } from '../../lib/pipeline/analysis';
import { compareSkin, type SkinDifference } from '../../lib/pipeline/compare-skin';
import { type EarlierVisit, earlierVisit } from '../../lib/pipeline/earlier-visit';
import { skinMap } from '../../lib/pipeline/skin-map';
import { isMeasured } from '../../lib/result';
import { samplePhoto } from './test-clinic';

const request = { geometry: OWN_CARD, print: { scale: 1, relativeU: 0.005, confirmed: true }, context: { receivedAt: null, knownSha256: new Set<string>() } };

async function analysed(day: string, earlier: readonly EarlierVisit[]): Promise<Analysis> {
  const result = await analysePhoto(samplePhoto(`series/day-${day}.jpg`), { ...request, earlier }, await analysisPorts());
  if (!result.analysed) throw new Error(result.refusal.id);
  return result.analysis;
}

/** One day's skin against an earlier one's. */
async function differences(day: string, earlierDay: string): Promise<SkinDifference[]> {
  const then = await analysed(earlierDay, []);
  const visit = earlierVisit(analysisToJson(then, earlierDay));
  const earlier = visit ? [{ ...visit, photo: earlierDay, skin: skinMap(then) }] : [];
  return compareSkin(await analysed(day, earlier), earlier);
}

let first: AnalysisJson;
let alone: AnalysisJson;
let after: AnalysisJson;

beforeAll(async () => {
  const measure = async (day: string, earlier: readonly EarlierVisit[]) => analysisToJson(await analysed(day, earlier), day);
  first = await measure('05', []);
  alone = await measure('06', []);
  after = await measure('06', [earlierVisit(first)].flatMap((visit) => visit ?? []));
});

describe('a photo measured after an earlier visit', () => {
  it('says that its margin was carried over; one without earlier visits that it is a proposal', () => {
    expect(alone.outlines?.marginOrigin).toBe('proposed');
    expect(after.outlines?.marginOrigin).toBe('carriedOver');
    expect(after.outlines?.treatedSide).toBe(first.outlines?.treatedSide);
  });

  it('keeps its own redness, whose area does not depend on the margin', () => {
    const [a, b] = [alone, after].map(({ measurements }) => measurements.erythemaArea);
    if (!isMeasured(a) || !isMeasured(b)) throw new Error('The sample photo was not measured.');
    expect(b.value).toBeCloseTo(a.value, 6);
  });

  it('moves its margin by less than the two visits may differ, and not at all out of the toe', () => {
    const [a, b] = [alone, after].map(({ measurements }) => measurements.reach);
    if (!isMeasured(a) || !isMeasured(b)) throw new Error('The sample photo was not measured.');
    expect(Math.abs(a.value - b.value)).toBeLessThan(a.U);
  });

  it('is redder than days before by about what has truly grown, and than days later hardly anywhere', async () => {
    // Truth of the rendered series: 71.8 mm² on day 5, 106.5 on day 9.
    const [grown] = await differences('09', '05');
    expect(grown.redderMm2).toBeGreaterThan(0.5 * (106.5 - 71.8));
    expect(grown.redderMm2).toBeLessThan(2 * (106.5 - 71.8));
    // The other way round only mottled skin and light are left.
    expect((await differences('05', '09'))[0].redderMm2).toBeLessThan((106.5 - 71.8) / 4);
  });

  it('is the same as alone where the earlier photo had no plate', () => {
    expect(earlierVisit({ outlines: null })).toBeNull();
  });
});
