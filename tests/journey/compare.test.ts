/** Two photos of one toe that lies differently in the notch each time: lines of the first, laid over the second, lie on its own. */
import { beforeAll, describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../lib/card/own-card';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { analysePhoto } from '../../lib/pipeline/analyse-photo';
import { type AnalysisJson, analysisToJson } from '../../lib/pipeline/analysis-json';
import { LINE_MM } from '../../lib/report/constants';
import { layOver } from '../../lib/server/lay-over';
import { standOf } from '../../lib/server/stand-of';
import type { LineOfPairs } from '../phantom/phantom-truth';
import { distanceToLineMm } from '../phantom/truth/line-distance';
import { samplePhoto } from './test-clinic';

/** Visits of the sample series; between the first two the toe lies four millimetres and nine degrees apart. */
const DAYS = ['01', '02', '03', '05', '06'];
const visits: AnalysisJson[] = [];

beforeAll(async () => {
  const ports = await analysisPorts();
  for (const day of DAYS) {
    const result = await analysePhoto(samplePhoto(`series/day-${day}.jpg`), { geometry: OWN_CARD, print: { scale: 1, relativeU: 0.005, confirmed: true }, context: { receivedAt: null, knownSha256: new Set() } }, ports);
    if (!result.analysed) throw new Error(result.refusal.id);
    visits.push(analysisToJson(result.analysis, day));
  }
});

const rmsMm = (a: LineOfPairs, b: LineOfPairs): number => Math.sqrt([...a.map((at) => distanceToLineMm(at, b) ** 2), ...b.map((at) => distanceToLineMm(at, a) ** 2)].reduce((sum, one) => sum + one, 0) / (a.length + b.length));
const marginOf = (visit: AnalysisJson): LineOfPairs => visit.outlinesAsSeen?.nailFoldMargin ?? [];
function laid(earlier: AnalysisJson, later: AnalysisJson): LineOfPairs {
  const flat = { erythema: null, raw: null, nailFoldMargin: earlier.outlines?.nailFoldMargin ?? null };
  const [{ path }] = layOver(flat, standOf(earlier), standOf(later)).lines;
  return path.slice(1).split('L').map((pair) => pair.split(' ').map(Number) as [number, number]);
}

describe('the nail-fold margin of one visit on the photo of the next', () => {
  it('lies on that visit’s own, to what both were found to', () => {
    const pairs = DAYS.slice(1).map((_, at) => [visits[at], visits[at + 1]] as const);
    const pooled = (offs: readonly number[]) => Math.sqrt(offs.reduce((sum, off) => sum + off ** 2, 0) / offs.length);
    const byCard = pooled(pairs.map(([earlier, later]) => rmsMm(marginOf(earlier), marginOf(later))));
    const byToe = pooled(pairs.map(([earlier, later]) => rmsMm(laid(earlier, later), marginOf(later))));
    console.log(`Margin of one visit on the next, root mean square: ${byCard.toFixed(2)} mm by the card alone, ${byToe.toFixed(2)} mm with the toe.`);
    expect(byToe).toBeLessThan(byCard / 2);
    // Each margin is found to about 0.5 mm; two of them differ by the root of two of that.
    expect(byToe).toBeLessThan(0.75);
  });

  it('is its own line again on its own photo, to less than the pen is wide', () => {
    for (const visit of visits) expect(rmsMm(laid(visit, visit), marginOf(visit))).toBeLessThan(LINE_MM);
  });
});
