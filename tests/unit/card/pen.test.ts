import { describe, expect, it } from 'vitest';
import { cellOutlines } from '../../../lib/card/cell-outlines';
import { BLACK, NOTCH_WIDTHS_MM } from '../../../lib/card/constants';
import { dashedLine } from '../../../lib/card/dashed-line';
import { drawingSvg } from '../../../lib/card/drawing-svg';
import { markerBits, markerShape } from '../../../lib/card/marker-shape';
import { notchOutline } from '../../../lib/card/notch-outline';
import { ownCardDrawing } from '../../../lib/card/own-card-drawing';
import { PEN_GLYPHS } from '../../../lib/card/pen-glyphs';
import { penText, penTextWidthMm } from '../../../lib/card/pen-text';
import { rasterDrawing } from '../../../lib/card/raster-drawing';
import { centredRing, rectRing } from '../../../lib/card/rect-ring';
import { SERIAL_ALPHABET } from '../../../lib/card/serial';
import { smoothLine } from '../../../lib/card/smooth-line';
import { strokeOutline } from '../../../lib/card/stroke-outline';
import type { PointMm, RingMm } from '../../../lib/units';
import { SAMPLE_SERIAL, sampleDrawing } from './sample-drawing';

/** Shoelace formula; clockwise on the page is positive. */
function signedAreaMm2(ring: RingMm): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length];
    return sum + (p.acrossMm * q.downMm - q.acrossMm * p.downMm) / 2;
  }, 0);
}
const areaMm2 = (rings: readonly RingMm[]): number => rings.reduce((sum, ring) => sum + signedAreaMm2(ring), 0);
const at = (acrossMm: number, downMm: number): PointMm => ({ acrossMm, downMm });
const lengthMm = (line: readonly PointMm[]): number =>
  line.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.acrossMm - line[i].acrossMm, p.downMm - line[i].downMm), 0);

describe('the pen', () => {
  it('leaves length times width along an open line, whichever way it runs', () => {
    const line = [at(0, 0), at(4, 0), at(4, 3)];
    expect(areaMm2(strokeOutline(line, 0.5))).toBeCloseTo(7 * 0.5, 12);
    expect(areaMm2(strokeOutline([...line].reverse(), 0.5))).toBeCloseTo(7 * 0.5, 12);
  });

  it('leaves a frame along a closed line, whichever way it runs', () => {
    const line = [at(0, 0), at(4, 0), at(4, 3), at(0, 3), at(0, 0)];
    const frame = 4.5 * 3.5 - 3.5 * 2.5;
    expect(areaMm2(strokeOutline(line, 0.5))).toBeCloseTo(frame, 12);
    expect(areaMm2(strokeOutline([...line].reverse(), 0.5))).toBeCloseTo(frame, 12);
  });

  it('draws no line with one point', () => {
    expect(() => strokeOutline([at(0, 0)], 1)).toThrow('received 1');
  });

  it('dashes a line round its corners without losing length', () => {
    const dashes = dashedLine([at(0, 0), at(2.5, 0), at(2.5, 2.5)], 2, 1);
    expect(dashes.map(lengthMm)).toEqual([2, 2]);
    expect(dashes[1][0]).toEqual(at(2.5, 0.5));
    expect(dashedLine([at(0, 0), at(2.5, 0), at(2.5, 1)], 2, 0.25)[1]).toEqual([at(2.25, 0), at(2.5, 0), at(2.5, 1)]);
  });

  it('draws a smooth line through all its points', () => {
    const points = [at(0, 0), at(3, 1), at(5, 4), at(2, 6)];
    const line = smoothLine(points);
    for (const point of points) expect(line).toContainEqual(point);
    expect(line).toHaveLength(25);
  });

  it('can write every serial, and stays within the width it says', () => {
    for (const symbol of SERIAL_ALPHABET) expect(PEN_GLYPHS).toHaveProperty(symbol);
    const across = penText('CARD FW1', at(1, 1), 3, BLACK).rings.flat().map((p) => p.acrossMm);
    const widthMm = Math.max(...across) - Math.min(...across);
    // The pen itself is 0.4 mm wide at this height and draws on the middle of its line.
    expect(Math.abs(widthMm - penTextWidthMm('CARD FW1', 3))).toBeLessThan(0.45);
    expect(() => penText('card', at(0, 0), 2, BLACK)).toThrow('no glyph for "c"');
  });

  it('writes no two symbols alike', () => {
    const shapes = [...SERIAL_ALPHABET].map((symbol) => JSON.stringify(PEN_GLYPHS[symbol]));
    expect(new Set(shapes).size).toBe(32);
  });
});

describe('outlines of cells', () => {
  it('join cells that touch at a side', () => {
    expect(cellOutlines([[true, true]], at(0, 0), 2)).toEqual([[at(0, 0), at(4, 0), at(4, 2), at(0, 2)]]);
  });

  it('keep holes, and cells that touch at a corner, at their exact area', () => {
    const ring = cellOutlines([[true, true, true], [true, false, true], [true, true, true]], at(1, 1), 1);
    expect(ring).toHaveLength(2);
    expect(areaMm2(ring)).toBeCloseTo(8, 12);
    expect(areaMm2(cellOutlines([[true, false], [false, true]], at(0, 0), 3))).toBeCloseTo(18, 12);
  });
});

describe('marker shapes', () => {
  it('have the area of their dark modules', () => {
    for (let id = 0; id < 50; id++) {
      const white = markerBits(id).flat().filter(Boolean).length;
      expect(areaMm2(markerShape({ id, centre: at(10, 10), sizeMm: 9 }).rings)).toBeCloseTo(81 - 2.25 * white, 9);
    }
  });

  it('are not made for ids the dictionary does not have', () => {
    for (const id of [-1, 50, 1.5]) expect(() => markerBits(id)).toThrow(`received ${id}`);
  });
});

describe('the drawing', () => {
  it('prints each fiducial and each inked patch where the geometry says', () => {
    const names = sampleDrawing().map((shape) => shape.name);
    expect(names.filter((name) => name.startsWith('fiducial'))).toHaveLength(8);
    expect(new Set(names).size).toBe(names.length);
  });

  it('has a bar of exactly 50 mm', () => {
    const bar = sampleDrawing().find((shape) => shape.name === 'bar');
    const across = bar?.rings[0].map((p) => p.acrossMm) ?? [];
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(50, 12);
    const ticks = sampleDrawing().find((shape) => shape.name === 'bar ticks')?.rings ?? [];
    const edges = ticks.flat().map((p) => p.acrossMm);
    expect(ticks).toHaveLength(51);
    expect([Math.min(...edges), Math.max(...edges)]).toEqual([Math.min(...across), Math.max(...across)]);
  });

  it('refuses a code of another size', () => {
    expect(() => ownCardDrawing(SAMPLE_SERIAL, [[true]])).toThrow('received 1 rows');
  });

  it('draws half circles that reach the widths the cut lines have', () => {
    for (const width of Object.values(NOTCH_WIDTHS_MM)) {
      const across = notchOutline(width).map((p) => p.acrossMm);
      expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(width, 9);
    }
  });

  it('becomes an SVG of true size with one path per shape', () => {
    const shape = { name: 'square', ink: [1, 2, 3] as const, rings: [rectRing(1, 1, 2, 2)] };
    const svg = drawingSvg([shape], { widthMm: 85.6, heightMm: 53.98 });
    expect(svg).toContain('width="85.6mm" height="53.98mm" viewBox="0 0 85.6 53.98"');
    expect(svg).toContain('<path fill="rgb(1,2,3)" d="M1 1L3 1L3 3L1 3Z"/>');
    expect(drawingSvg(sampleDrawing(), { widthMm: 85.6, heightMm: 53.98 })).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the raster', () => {
  const square = (sideMm: number) => ({ name: 'square', ink: BLACK, rings: [rectRing(0, 0, sideMm, sideMm)] });

  it('has the size of the card times the resolution, rounded', () => {
    const raster = rasterDrawing([], { widthMm: 85.6, heightMm: 53.98 }, 20);
    expect([raster.widthPx, raster.heightPx, raster.srgb.length]).toEqual([1712, 1080, 1712 * 1080 * 3]);
    expect(raster.srgb.every((code) => code === 255)).toBe(true);
  });

  it('mixes ink and paper in linear light: half a pixel of black is code value 188, a quarter 225', () => {
    const { srgb } = rasterDrawing([square(1.5)], { widthMm: 3, heightMm: 3 }, 1);
    const green = [...srgb].filter((_, i) => i % 3 === 1);
    expect(green).toEqual([0, 188, 255, 188, 225, 255, 255, 255, 255]);
  });

  it('cuts off what lies beyond the page', () => {
    const beyond = { name: 'large', ink: BLACK, rings: [centredRing(at(1, 1), 100)] };
    expect(rasterDrawing([beyond], { widthMm: 2, heightMm: 2 }, 2).srgb.every((code) => code === 0)).toBe(true);
    const outside = { name: 'away', ink: BLACK, rings: [rectRing(5, -8, 3, 3)] };
    expect(rasterDrawing([outside], { widthMm: 2, heightMm: 2 }, 2).srgb.every((code) => code === 255)).toBe(true);
  });

  it('refuses a resolution that is no positive number', () => {
    for (const pxPerMm of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => rasterDrawing([], { widthMm: 1, heightMm: 1 }, pxPerMm)).toThrow(`received ${pxPerMm}`);
    }
  });
});
