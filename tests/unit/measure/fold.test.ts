import { describe, expect, it } from 'vitest';
import { besideLine } from '../../../lib/measure/beside-line';
import { foldSeenShare } from '../../../lib/measure/fold-seen-share';
import { type FoldSide, foldSide } from '../../../lib/measure/fold-side';
import type { MeasureInput, Measurand, Outlines } from '../../../lib/measure/measure-input';
import { leanPoint } from '../../../lib/measure/lean-point';
import { measureToe } from '../../../lib/measure/measure-toe';
import { isMeasured, type Measured } from '../../../lib/result';
import type { RingMm } from '../../../lib/units';
import { rectangleRing } from './shapes';
import { LATERAL, marginLine, region, SIMPLE } from './simple-toe';

const withOutlines = (outlines: Partial<Outlines>, rest: Partial<MeasureInput> = {}): MeasureInput => ({ ...SIMPLE, ...rest, outlines: { ...SIMPLE.outlines, ...outlines } });
/** The margin runs straight down the side and nowhere else. */
const STRAIGHT: Partial<Outlines> = { nailFoldMargin: marginLine(LATERAL) };

function valueOf(input: MeasureInput, key: Measurand): Measured {
  const one = measureToe(input).measurements[key];
  if (!isMeasured(one)) throw new Error(`${key}: ${one.notMeasured}`);
  return one;
}
const reasonOf = (input: MeasureInput, key: Measurand) => {
  const one = measureToe(input).measurements[key];
  return isMeasured(one) ? null : one.notMeasured;
};

describe('a point beside a line', () => {
  const down = [0, 1, 2, 3].map((downMm) => ({ acrossMm: 0, downMm }));
  it('is on the left, looking down the page, where across grows', () => {
    expect(besideLine({ acrossMm: 2, downMm: 1 }, down)).toEqual({ mm: 2, atEnd: false });
    expect(besideLine({ acrossMm: -2, downMm: 1 }, down)).toEqual({ mm: -2, atEnd: false });
    expect(besideLine({ acrossMm: 2, downMm: 1 }, [...down].reverse()).mm).toBe(-2);
  });

  it('is not beside it before its beginning and behind its end', () => {
    expect(besideLine({ acrossMm: 1, downMm: -3 }, down).atEnd).toBe(true);
    expect(besideLine({ acrossMm: 1, downMm: 9 }, down).atEnd).toBe(true);
  });
});

describe('the strip of fold beside the margin', () => {
  it('is four millimetres wide along fourteen millimetres of margin', () => {
    const strip = valueOf(withOutlines(STRAIGHT), 'foldStripArea');
    expect(Math.abs(strip.value - 56)).toBeLessThan(strip.U);
    expect(strip.U).toBeLessThan(6);
    expect(strip.unit).toBe('mm2');
  });

  it('ends at the outline of the toe', () => {
    const strip = valueOf(withOutlines({ ...STRAIGHT, toe: region(rectangleRing(33, 12, 19, 38)) }), 'foldStripArea');
    expect(Math.abs(strip.value - 28)).toBeLessThan(strip.U);
  });

  it('is the same on either side of the nail, and whichever way the margin is written down', () => {
    const mirrored = withOutlines({
      nailFoldMargin: marginLine(LATERAL.map(({ downMm }) => ({ acrossMm: 38, downMm })).reverse()),
      nailPlate: region(rectangleRing(40.5, 20, 9.5, 14)),
    });
    expect(valueOf(mirrored, 'foldStripArea').value).toBeCloseTo(valueOf(withOutlines(STRAIGHT), 'foldStripArea').value, 0);
  });

  it('needs a margin, and a plate to tell the sides', () => {
    expect(reasonOf(withOutlines({ nailFoldMargin: null }), 'foldStripArea')).toBe('marginNotFound');
    expect(reasonOf(withOutlines({ nailPlate: null }), 'foldStripArea')).toBe('marginNotFound');
  });
});

describe('raw tissue beyond the margin', () => {
  it('is as far out as its outline', () => {
    const out = valueOf(withOutlines({ ...STRAIGHT, raw: region(rectangleRing(48, 22, 3.5, 8)) }), 'rawBeyondMargin');
    expect(out.value).toBeCloseTo(1.5, 1);
  });

  it('is about nothing where it fills the groove, and negative where it stays inside: never left out', () => {
    expect(valueOf(withOutlines(STRAIGHT), 'rawBeyondMargin').value).toBeCloseTo(0, 1);
    expect(valueOf(withOutlines({ ...STRAIGHT, raw: region(rectangleRing(48, 22, 1, 8)) }), 'rawBeyondMargin').value).toBeCloseTo(-1, 1);
  });

  it('is a reason where nothing raw was found', () => {
    expect(reasonOf(withOutlines({ raw: null }), 'rawBeyondMargin')).toBe('noRegionFound');
  });
});

describe('the treated fold against the other side', () => {
  const swollen: RingMm = [
    [33, 12], [55, 12], [55, 20], [57, 20], [57, 34], [55, 34], [55, 50], [33, 50],
  ].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));

  it('stands out by nothing on a toe that is the same on both sides', () => {
    expect(valueOf(withOutlines(STRAIGHT), 'foldBulge').value).toBeCloseTo(0, 6);
  });

  it('stands out by two millimetres where it is two millimetres thicker, on whichever side', () => {
    expect(valueOf(withOutlines({ ...STRAIGHT, toe: region(swollen) }), 'foldBulge').value).toBeCloseTo(2, 3);
    const turned = swollen.map(({ acrossMm, downMm }) => ({ acrossMm: 88 - acrossMm, downMm }));
    expect(valueOf(withOutlines({ ...STRAIGHT, toe: region(turned) }), 'foldBulge').value).toBeCloseTo(-2, 3);
  });

  it('is a reason where too little of the toe behind the nail is seen', () => {
    expect(reasonOf(withOutlines({ ...STRAIGHT, toe: region(rectangleRing(33, 12, 22, 26)) }), 'foldBulge')).toBe('toeShapeUnknown');
  });
});

describe('a fold that the camera could not see', () => {
  const HALF_WIDTH = 11;
  const MARGIN_SHARE = 0.72;
  const FLATNESS = 0.8;
  /** The outline that a lens at an angle of tangent `lean` shows of an elliptic toe of 22 mm with its middle at 44. */
  function seenFrom(lean: number) {
    const depthMm = FLATNESS * HALF_WIDTH * Math.sqrt(1 - MARGIN_SHARE ** 2);
    const cylinder = { axis: { across: 0, down: 1 }, startMm: 12, halfWidthsMm: Array.from({ length: 76 }, () => HALF_WIDTH * Math.hypot(1, FLATNESS * lean)), centreMm: 44 - lean * depthMm, centreSlope: 0 };
    const acrossMm = 44 + MARGIN_SHARE * HALF_WIDTH;
    const side = foldSide({ nailPlate: SIMPLE.outlines.nailPlate, nailFoldMargin: marginLine(LATERAL.map(({ downMm }) => ({ acrossMm, downMm }))) }) as FoldSide;
    const lens = { acrossMm: acrossMm - lean * 1e6, downMm: 27, heightMm: 1e6 };
    return foldSeenShare(side, { cylinder, lens }) as number;
  }

  it('is wholly seen from straight above, and from its own side', () => {
    expect(seenFrom(0)).toBe(1);
    expect(seenFrom(-0.7)).toBe(1);
  });

  it.each([0.5, 0.6, 0.7, 0.9])('turns away where an ellipse does: a lens from the other side at a tangent of %d', (lean) => {
    // On x²/W² + z²/(kW)² = 1 the line of sight touches at x / W = 1 / √(1 + k²t²).
    const expected = (1 / Math.hypot(1, FLATNESS * lean) - MARGIN_SHARE) / (1 - MARGIN_SHARE);
    // Looked at in eight steps across four millimetres, of which the toe has three.
    expect(Math.abs(seenFrom(lean) - expected)).toBeLessThan(1 / 6);
  });

  it('takes every number of redness with it, and leaves the raw area', () => {
    const above = measureToe(withOutlines(STRAIGHT, { lens: { acrossMm: 44, downMm: 27, heightMm: 250 } }));
    expect(isMeasured(above.measurements.erythemaArea)).toBe(true);
    const aside = measureToe(seenFromTheSide());
    for (const key of ['erythemaArea', 'reach', 'unrolledArea', 'proximalReach'] as const) expect(aside.measurements[key], key).toEqual({ notMeasured: 'foldHidden' });
    expect(isMeasured(aside.measurements.rawArea)).toBe(true);
  });

  /** A toe with its margin at 85 % of the half width, as a lens at 45° on the other side shows it. */
  function seenFromTheSide(): MeasureInput {
    const lens = { acrossMm: -206, downMm: 27, heightMm: 250 };
    const halfMm = HALF_WIDTH * Math.hypot(1, FLATNESS);
    const centreMm = 44 - FLATNESS * HALF_WIDTH * Math.sqrt(1 - MARGIN_SHARE ** 2);
    const relief = { cylinder: { axis: { across: 0, down: 1 }, startMm: 12, halfWidthsMm: Array.from({ length: 76 }, () => halfMm), centreMm, centreSlope: 0 }, lens };
    const margin = LATERAL.map(({ downMm }) => leanPoint(relief, { acrossMm: 44 + 0.85 * HALF_WIDTH, downMm }));
    return withOutlines({ nailFoldMargin: marginLine(margin), toe: region(rectangleRing(centreMm - halfMm, 12, 2 * halfMm, 38)) }, { lens });
  }
});

describe('what the raw surface is made of', () => {
  const share = (value: number) => ({ value, u: 0.05 });
  it('is given in per cent with its uncertainty', () => {
    const input = withOutlines({}, { rawTissue: { red: share(0.7), yellow: share(0.2), dark: share(0.1) } });
    const red = valueOf(input, 'rawRedShare');
    expect(red.value).toBeCloseTo(70, 9);
    expect(red.u).toBeCloseTo(Math.hypot(5, 2), 9);
    expect(red.unit).toBe('%');
    expect(valueOf(input, 'rawDarkShare').value).toBeCloseTo(10, 9);
  });

  it('is a reason without a raw surface', () => {
    expect(reasonOf(withOutlines({ raw: null }, { rawTissue: { red: share(1), yellow: share(0), dark: share(0) } }), 'rawYellowShare')).toBe('noRegionFound');
  });
});
