import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { rasterDrawing, type Raster } from '../../../lib/card/raster-drawing';
import { cardCode } from '../../../lib/card/serial';
import { qrModules } from '../../../lib/edges/paper/qr-modules';
import { SAMPLE_SERIAL, sampleDrawing } from '../../unit/card/sample-drawing';

function croppedCode({ widthPx, srgb }: Raster, pxPerMm: number): { data: Uint8ClampedArray; side: number } {
  const { centre, sizeMm } = OWN_CARD.qr ?? { centre: { acrossMm: 0, downMm: 0 }, sizeMm: 0 };
  // The quiet zone of 4 modules is part of the code.
  const side = Math.round(sizeMm * (29 / 21) * pxPerMm);
  const left = Math.round(centre.acrossMm * pxPerMm - side / 2);
  const top = Math.round(centre.downMm * pxPerMm - side / 2);
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      for (let channel = 0; channel < 3; channel++) {
        data[(row * side + column) * 4 + channel] = srgb[((top + row) * widthPx + left + column) * 3 + channel];
      }
    }
  }
  return { data, side };
}

describe('the code on the card (ISO/IEC 18004)', () => {
  it.each([6, 8, 12, 20])('is read by another library than the one that made it, at %f px/mm', (pxPerMm) => {
    const { data, side } = croppedCode(rasterDrawing(sampleDrawing(), OWN_CARD, pxPerMm), pxPerMm);
    expect(jsQR(data, side, side)?.data).toBe(cardCode(SAMPLE_SERIAL));
  });

  it('is read from the whole face of the card too', () => {
    const { widthPx, heightPx, srgb } = rasterDrawing(sampleDrawing(), OWN_CARD, 12);
    const rgba = new Uint8ClampedArray(widthPx * heightPx * 4).fill(255);
    for (let i = 0; i < widthPx * heightPx; i++) for (let channel = 0; channel < 3; channel++) rgba[4 * i + channel] = srgb[3 * i + channel];
    const code = jsQR(rgba, widthPx, heightPx);
    expect(code?.data).toBe(cardCode(SAMPLE_SERIAL));
    expect(code?.version).toBe(1);
  });

  it('is 21 modules wide: version 1', () => {
    const modules = qrModules(cardCode(SAMPLE_SERIAL));
    expect([modules.length, ...new Set(modules.map((row) => row.length))]).toEqual([21, 21]);
  });

  it('is still read when glare covers a spot a tenth as wide as the code', () => {
    const { data, side } = croppedCode(rasterDrawing(sampleDrawing(), OWN_CARD, 12), 12);
    const spot = Math.round(side * 0.1);
    const [top, left] = [Math.round(side * 0.62), Math.round(side * 0.6)];
    for (let row = top; row < top + spot; row++) data.fill(255, (row * side + left) * 4, (row * side + left + spot) * 4);
    expect(jsQR(data, side, side)?.data).toBe(cardCode(SAMPLE_SERIAL));
  });
});
