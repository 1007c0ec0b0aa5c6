import { codeOfLight } from './code-of-light';
import type { InkedShape } from './inked-shape';
import { lightOfCode } from './light-of-code';
import { shapeCoverage } from './shape-coverage';

/** A picture without a file: red, green, blue interleaved, sRGB code values. */
export interface Raster {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly srgb: Uint8Array;
}

/** Most neighbours are alike, so the costly power is taken only where the light changes. */
function encoded(light: Float32Array): Uint8Array {
  const srgb = new Uint8Array(light.length);
  let last = 0;
  let lastCode = codeOfLight(0);
  for (let at = 0; at < light.length; at++) {
    if (light[at] !== last) {
      last = light[at];
      lastCode = codeOfLight(last);
    }
    srgb[at] = lastCode;
  }
  return srgb;
}

/**
 * The drawing as a picture on white paper, with each pixel's ink in exact proportion to its area.
 *
 * @param shapes in mm, printed in this order
 * @param size of the page in mm
 * @param pxPerMm > 0; the scale is exactly this, and the page is rounded to whole pixels at its right and lower edge
 * @returns round(width · pxPerMm) × round(height · pxPerMm) pixels. Refuses a scale that is not positive with a
 *   RangeError. Ink covers paper in linear light, so half a pixel of black gives code value 188, not 128.
 * @example rasterDrawing([], { widthMm: 85.6, heightMm: 53.98 }, 20).widthPx // 1712
 */
export function rasterDrawing(
  shapes: readonly InkedShape[],
  size: { readonly widthMm: number; readonly heightMm: number },
  pxPerMm: number,
): Raster {
  if (!(pxPerMm > 0) || !Number.isFinite(pxPerMm)) {
    throw new RangeError(`rasterDrawing: pxPerMm must be a positive number, received ${pxPerMm}`);
  }
  const widthPx = Math.round(size.widthMm * pxPerMm);
  const heightPx = Math.round(size.heightMm * pxPerMm);
  const light = new Float32Array(widthPx * heightPx * 3).fill(1);
  for (const shape of shapes) {
    const ink = shape.ink.map(lightOfCode);
    const { left, top, widthPx: wide, heightPx: high, share } = shapeCoverage(shape, pxPerMm, widthPx, heightPx);
    for (let row = 0; row < high; row++) {
      for (let column = 0; column < wide; column++) {
        const covered = share[row * wide + column];
        if (covered === 0) continue;
        const at = ((top + row) * widthPx + left + column) * 3;
        for (let channel = 0; channel < 3; channel++) light[at + channel] += covered * (ink[channel] - light[at + channel]);
      }
    }
  }
  return { widthPx, heightPx, srgb: encoded(light) };
}
