/**
 * A plain card for phantoms of foreign designs: six black-and-white squares, greys, four colours. Not the project's own
 * card.
 */
import { ARUCO_4X4_50 } from '../../../lib/card/aruco-4x4-50';
import type { CardGeometry } from '../../../lib/card/card-geometry';
import type { CardFace } from './card-face';

const PX_PER_MM = 20;
const SQUARE_MM = 8.4;
const CELLS = 6;

const GREYS: readonly [string, number][] = [['white', 255], ['grey 1', 210], ['grey 2', 165], ['grey 3', 120], ['grey 4', 80], ['black', 25]];
const COLOURS: readonly [string, readonly [number, number, number]][] = [
  ['red', [190, 50, 45]], ['green', [70, 145, 80]], ['blue', [55, 80, 165]], ['skin', [205, 160, 130]],
];

function notch(): { acrossMm: number; downMm: number }[] {
  const middle = 42.8;
  const half = 14.5;
  const points = [{ acrossMm: middle - half, downMm: 53.98 }];
  for (let i = 0; i <= 40; i++) {
    const angle = Math.PI - (Math.PI * i) / 40;
    points.push({ acrossMm: middle + half * Math.cos(angle), downMm: 32 - half * 0.95 * Math.sin(angle) });
  }
  points.push({ acrossMm: middle + half, downMm: 53.98 });
  return points;
}

/** The stand-in's geometry; `firstId` 0…44 chooses the set of squares. */
export function standInGeometry(firstId: number): CardGeometry {
  const places: readonly (readonly [number, number])[] = [[8, 8], [77.6, 8], [8, 46], [77.6, 46], [20, 27.5], [65.6, 27.5]];
  return {
    version: `stand-in-${firstId}`,
    widthMm: 85.6,
    heightMm: 53.98,
    notch: notch(),
    dictionary: 'DICT_4X4_50',
    fiducials: places.map(([acrossMm, downMm], i) => ({ id: firstId + i, centre: { acrossMm, downMm }, sizeMm: SQUARE_MM })),
    patches: [
      ...GREYS.map(([name, code], i) => ({
        name, kind: i === 0 ? ('white' as const) : ('grey' as const), centre: { acrossMm: 22 + 8.2 * i, downMm: 7 }, widthMm: 6, heightMm: 6,
        designSrgb: [code, code, code] as const,
      })),
      ...COLOURS.map(([name, designSrgb], i) => ({
        name, kind: 'colour' as const, centre: { acrossMm: i < 2 ? 7.5 : 78.1, downMm: 22 + 10 * (i % 2) }, widthMm: 6, heightMm: 6, designSrgb,
      })),
    ],
    qr: null,
  };
}

/** Draws the stand-in. */
export function standInFace(firstId = 0): CardFace {
  const geometry = standInGeometry(firstId);
  const widthPx = Math.round(geometry.widthMm * PX_PER_MM);
  const heightPx = Math.round(geometry.heightMm * PX_PER_MM);
  const srgb = new Uint8Array(widthPx * heightPx * 3).fill(255);
  const fill = (left: number, top: number, width: number, height: number, rgb: readonly number[]): void => {
    for (let r = Math.round(top * PX_PER_MM); r < Math.round((top + height) * PX_PER_MM); r++) {
      for (let c = Math.round(left * PX_PER_MM); c < Math.round((left + width) * PX_PER_MM); c++) srgb.set(rgb, (r * widthPx + c) * 3);
    }
  };
  for (const { id, centre, sizeMm } of geometry.fiducials) {
    const left = centre.acrossMm - sizeMm / 2;
    const top = centre.downMm - sizeMm / 2;
    const cell = sizeMm / CELLS;
    fill(left, top, sizeMm, sizeMm, [20, 20, 20]);
    for (let bit = 0; bit < 16; bit++) {
      if ((ARUCO_4X4_50[id] >> (15 - bit)) & 1) fill(left + cell * (1 + (bit % 4)), top + cell * (1 + (bit >> 2)), cell, cell, [255, 255, 255]);
    }
  }
  for (const { centre, widthMm, heightMm, designSrgb } of geometry.patches) {
    fill(centre.acrossMm - widthMm / 2, centre.downMm - heightMm / 2, widthMm, heightMm, designSrgb);
  }
  return { geometry, cut: geometry.notch, pxPerMm: PX_PER_MM, widthPx, heightPx, srgb };
}
