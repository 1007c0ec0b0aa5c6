import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { rasterDrawing, type Raster } from '../../../lib/card/raster-drawing';
import { cardCode } from '../../../lib/card/serial';
import { qrModules } from '../../../lib/edges/paper/qr-modules';
import { openCv, withOpenCv } from '../../../lib/edges/vision/open-cv';
import { refineCorners } from '../../../lib/rectify/refine-corners';
import { SAMPLE_SERIAL, sampleDrawing } from '../../unit/card/sample-drawing';

interface Found {
  readonly id: number;
  readonly corners: readonly { readonly column: number; readonly row: number }[];
}

/** OpenCV's detector at its default settings with sub-pixel corners, on the raster's green channel. */
async function detect({ widthPx, heightPx, srgb }: Raster, mirrored = false): Promise<Found[]> {
  const { cv } = await openCv();
  return withOpenCv(cv, 'looking for markers', (own) => {
    const grey = own(new cv.Mat(heightPx, widthPx, cv.CV_8UC1));
    for (let row = 0; row < heightPx; row++) {
      for (let column = 0; column < widthPx; column++) {
        const from = mirrored ? widthPx - 1 - column : column;
        grey.data[row * widthPx + column] = srgb[(row * widthPx + from) * 3 + 1];
      }
    }
    const settings = own(new cv.aruco_DetectorParameters());
    settings.cornerRefinementMethod = 1;
    const dictionary = own(cv.getPredefinedDictionary(cv.DICT_4X4_50));
    const detector = own(new cv.aruco_ArucoDetector(dictionary, settings, own(new cv.aruco_RefineParameters(10, 3, true))));
    const corners = own(new cv.MatVector());
    const ids = own(new cv.Mat());
    detector.detectMarkers(grey, corners, ids);
    return Array.from({ length: corners.size() }, (_, i): Found => {
      const at: Float32Array = own(corners.get(i)).data32F;
      return { id: ids.data32S[i], corners: [0, 1, 2, 3].map((k) => ({ column: at[2 * k], row: at[2 * k + 1] })) };
    });
  });
}

/** Where a fiducial's corners are in the raster: pixel centres are whole numbers. */
function trueCorners(id: number, pxPerMm: number): { column: number; row: number }[] {
  const fiducial = OWN_CARD.fiducials.find((f) => f.id === id);
  if (fiducial === undefined) return [];
  const { centre, sizeMm } = fiducial;
  const signs = [[-1, -1], [1, -1], [1, 1], [-1, 1]];
  return signs.map(([across, down]) => ({
    column: (centre.acrossMm + (across * sizeMm) / 2) * pxPerMm - 0.5,
    row: (centre.downMm + (down * sizeMm) / 2) * pxPerMm - 0.5,
  }));
}

const ids = OWN_CARD.fiducials.map((f) => f.id);
const mean = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0) / all.length;

describe('the card as OpenCV sees it', () => {
  it.each([6, 12, 20])('has every fiducial at %f px/mm, upright, its centre within 0.1 px', async (pxPerMm) => {
    const found = await detect(rasterDrawing(sampleDrawing(), OWN_CARD, pxPerMm));
    expect(found.map((f) => f.id).sort((a, b) => a - b)).toEqual([...ids].sort((a, b) => a - b));
    for (const { id, corners } of found) {
      const truth = trueCorners(id, pxPerMm);
      const across = mean(corners.map((c) => c.column)) - mean(truth.map((c) => c.column));
      const down = mean(corners.map((c) => c.row)) - mean(truth.map((c) => c.row));
      expect(Math.hypot(across, down), `fiducial ${id}`).toBeLessThan(0.1);
      // The first corner is the marker's own top left: no marker is printed turned.
      expect(Math.hypot(corners[0].column - truth[0].column, corners[0].row - truth[0].row), `fiducial ${id}`).toBeLessThan(1);
    }
  });

  it('has its corners within 0.1 px at 20 px/mm once its edges are fitted as lines', async () => {
    const raster = rasterDrawing(sampleDrawing(), OWN_CARD, 20);
    const capture = {
      format: 'png', localTime: null, utcOffset: null, focalLengthMm: null, focalLength35Mm: null, lensModel: null,
      digitalZoom: null, deviceClass: 'unknown', colourSpace: 'srgb', orientationTag: 1, hasGainMap: false,
    } as const;
    for (const { id, corners } of await detect(raster)) {
      const fine = refineCorners({ ...raster, sha256: '', capture }, { id, cornersPx: corners });
      const truth = trueCorners(id, 20);
      const errors = fine?.cornersPx.map((c, i) => Math.hypot(c.column - truth[i].column, c.row - truth[i].row)) ?? [Infinity];
      expect(Math.max(...errors), `fiducial ${id}`).toBeLessThan(0.1);
    }
  });

  it.each([6, 20])('shows none of its fiducials in a mirror at %f px/mm', async (pxPerMm) => {
    const found = await detect(rasterDrawing(sampleDrawing(), OWN_CARD, pxPerMm), true);
    expect(found.filter((f) => ids.includes(f.id))).toEqual([]);
  });
});

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

describe('the patches as a picture shows them', () => {
  it.each([6, 20])('have their design colour from edge to edge at %f px/mm, white ones that of paper', (pxPerMm) => {
    const { widthPx, srgb } = rasterDrawing(sampleDrawing(), OWN_CARD, pxPerMm);
    for (const { name, centre, widthMm, heightMm, designSrgb } of OWN_CARD.patches) {
      // Pixels that lie wholly within the patch.
      const [left, right] = [Math.ceil((centre.acrossMm - widthMm / 2) * pxPerMm + 1e-6), Math.floor((centre.acrossMm + widthMm / 2) * pxPerMm - 1e-6)];
      const [top, bottom] = [Math.ceil((centre.downMm - heightMm / 2) * pxPerMm + 1e-6), Math.floor((centre.downMm + heightMm / 2) * pxPerMm - 1e-6)];
      // At least 20 × 20 pixels to average at 6 px/mm, once a pixel of blur is left out on every side.
      expect(Math.min(right - left, bottom - top) - 2, name).toBeGreaterThanOrEqual(20);
      const colours = new Set<string>();
      for (let row = top; row < bottom; row++) {
        for (let column = left; column < right; column++) {
          colours.add(srgb.slice((row * widthPx + column) * 3, (row * widthPx + column) * 3 + 3).join());
        }
      }
      expect([...colours], name).toEqual([designSrgb.join()]);
    }
  });
});

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
