/**
 * Do our measurands mean the same as the truth beside phantoms that others rendered? Their true outlines go in, their
 * true numbers have to come out. (The toe's axis and outline are not in their truth, so proximal reach and the
 * unrolled numbers cannot be compared.)
 */
import { readFileSync, readdirSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { MeasureInput, Measurand, ToeMeasurement } from '../../../lib/measure/measure-input';
import { measureToe } from '../../../lib/measure/measure-toe';
import { isMeasured } from '../../../lib/result';
import type { Region } from '../../../lib/segment/segmentation';
import type { LineMm } from '../../../lib/units';
import { hasSharedData, sharedFile } from '../../shared-data';
import { NOTHING, SIMPLE, marginLine } from '../../unit/measure/simple-toe';

type Pairs = readonly (readonly [number, number])[];
type TrueRings = readonly { readonly ring: Pairs; readonly hole: boolean }[];

interface Truth {
  readonly measurements: Readonly<Record<string, number>>;
  readonly outlines: {
    readonly erythema: TrueRings;
    readonly raw: TrueRings;
    readonly nailFoldMargin: Pairs;
    readonly nailFoldMarginLateral: Pairs;
    readonly cutEdge: Pairs;
  };
}

const SETS = ['accuracy', 'series', 'repeatability'];

/** Truth is exact to about 0.01 mm. Ours takes edge points 0.1 mm apart: a percentile may be off by half of that. */
const TOLERANCE: Partial<Record<Measurand, number>> = {
  reach: 0.02,
  reachP95: 0.05,
  grooveWidth: 0.01,
  grooveWidthMax: 0.01,
};
/** Its areas are counted on a fine raster: share of the area, and mm² for the smallest. */
const AREA_SHARE = 0.001;
const AREA_MM2 = 0.06;

const line = (pairs: Pairs): LineMm => pairs.map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
const regionOf = (rings: TrueRings): Region => ({
  rings: rings.map(({ ring, hole }) => ({ ring: line(ring), hole })),
  confidence: 1,
  boundaryUMm: 0,
});

function inputOf({ outlines }: Truth): MeasureInput {
  return {
    ...SIMPLE,
    grid: { originAcrossMm: -20, originDownMm: -20, pxPerMm: 8, widthPx: 1000, heightPx: 1000 },
    outlines: {
      ...NOTHING,
      erythema: regionOf(outlines.erythema),
      raw: regionOf(outlines.raw),
      nailFoldMargin: marginLine(line(outlines.nailFoldMargin)),
      marginLateral: line(outlines.nailFoldMarginLateral),
      cutEdge: { line: line(outlines.cutEdge), boundaryUMm: 0 },
    },
  };
}

describe.skipIf(!hasSharedData('toe-phantoms'))('true outlines of phantoms made elsewhere', () => {
  const truths = SETS.flatMap((set) =>
    readdirSync(sharedFile('toe-phantoms', set))
      .filter((name) => name.endsWith('.truth.json'))
      .map((name) => JSON.parse(readFileSync(sharedFile('toe-phantoms', set, name), 'utf8')) as Truth),
  ).filter(({ outlines }) => outlines.erythema.length > 0);
  let found: readonly ToeMeasurement['measurements'][] = [];
  beforeAll(() => {
    found = truths.map((truth) => measureToe(inputOf(truth)).measurements);
  });

  it('are there in number', () => {
    expect(truths.length).toBeGreaterThan(50);
  });

  it.each(['erythemaArea', 'rawArea', 'reach', 'reachP95', 'grooveWidth', 'grooveWidthMax'] as const)(
    'give their true %s',
    (key) => {
      truths.forEach((truth, index) => {
        const expected = truth.measurements[key];
        const ours = found[index][key];
        if (expected === 0 || expected === null) return;
        if (!isMeasured(ours)) throw new Error(`${key} was refused: ${ours.notMeasured}`);
        const tolerance = TOLERANCE[key] ?? Math.max(AREA_MM2, AREA_SHARE * expected);
        expect(Math.abs(ours.value - expected)).toBeLessThanOrEqual(tolerance);
      });
    },
  );
});
