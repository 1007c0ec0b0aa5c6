import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { rasterDrawing, type Raster } from '../../../lib/card/raster-drawing';
import { openCv, withOpenCv } from '../../../lib/edges/vision/open-cv';
import { refineCorners } from '../../../lib/rectify/refine-corners';
import { sampleDrawing } from '../../unit/card/sample-drawing';

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
