/** Earlier visits of one toe have their say in where the margin of the next lies; single photos are measured as before. */
import { beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../lib/card/own-card';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { analysePhoto } from '../../lib/pipeline/analyse-photo';
import { type AnalysisJson, analysisToJson } from '../../lib/pipeline/analysis-json';
import { type EarlierVisit, earlierVisit } from '../../lib/pipeline/earlier-visit';
import { isMeasured } from '../../lib/result';
import { samplePhoto } from './test-clinic';

let first: AnalysisJson;
let alone: AnalysisJson;
let after: AnalysisJson;

beforeAll(async () => {
  const ports = await analysisPorts();
  const measure = async (day: string, earlier: readonly EarlierVisit[]): Promise<AnalysisJson> => {
    const print = { scale: 1, relativeU: 0.005, confirmed: true };
    const result = await analysePhoto(samplePhoto(`series/day-${day}.jpg`), { geometry: OWN_CARD, print, context: { receivedAt: null, knownSha256: new Set() }, earlier }, ports);
    if (!result.analysed) throw new Error(result.refusal.id);
    return analysisToJson(result.analysis, day);
  };
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

  it('is the same as alone where the earlier photo had no plate', () => {
    expect(earlierVisit({ outlines: null })).toBeNull();
  });
});
