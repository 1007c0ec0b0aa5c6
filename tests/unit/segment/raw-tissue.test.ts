import { describe, expect, it } from 'vitest';
import { convertLab65ToLinear } from '../../../lib/colour/convert-lab65-to-linear';
import { rawTissue } from '../../../lib/segment/raw-tissue';
import type { ToeColours } from '../../../lib/segment/toe-colours';

/** Colours of wound tissue as L*, a*, b* under D65, from memory of wound photographs; typical, not measured here. */
const GRANULATION = { l65: 45, a65: 38, b65: 20 };
const SLOUGH = { l65: 68, a65: 8, b65: 34 };
const CRUST = { l65: 17, a65: 8, b65: 6 };

function patchwork(pixels: readonly { readonly l65: number; readonly a65: number; readonly b65: number }[]): ToeColours {
  const light = pixels.map(convertLab65ToLinear);
  return {
    grid: { originAcrossMm: 0, originDownMm: 0, pxPerMm: 8, widthPx: pixels.length, heightPx: 1 },
    red: Float32Array.from(light, ({ red }) => red),
    green: Float32Array.from(light, ({ green }) => green),
    blue: Float32Array.from(light, ({ blue }) => blue),
    seen: new Uint8Array(pixels.length).fill(1),
    erythemaIndex: new Float32Array(pixels.length),
  };
}

describe('what a raw surface is made of', () => {
  it('is told by the red, yellow and black of wound care (common practice)', () => {
    const tissue = rawTissue(patchwork([GRANULATION, GRANULATION, GRANULATION, SLOUGH, SLOUGH, CRUST]), new Uint8Array(6).fill(1));
    expect(tissue?.red.value).toBeCloseTo(1 / 2, 9);
    expect(tissue?.yellow.value).toBeCloseTo(1 / 3, 9);
    expect(tissue?.dark.value).toBeCloseTo(1 / 6, 9);
  });

  it('counts raw pixels that are seen and no others', () => {
    const colours = patchwork([GRANULATION, SLOUGH, CRUST]);
    colours.seen[2] = 0;
    expect(rawTissue(colours, Uint8Array.of(1, 0, 1))?.red.value).toBe(1);
    expect(rawTissue(colours, Uint8Array.of(0, 0, 1))).toBeNull();
  });

  it('is the less certain the more of it lies at a limit', () => {
    const between = { l65: 50, a65: 20, b65: 20 * Math.tan((51 * Math.PI) / 180) };
    expect(rawTissue(patchwork([GRANULATION, between]), Uint8Array.of(1, 1))?.yellow.u).toBeCloseTo(0.25, 9);
    expect(rawTissue(patchwork([GRANULATION, SLOUGH]), Uint8Array.of(1, 1))?.yellow.u).toBe(0);
  });
});
