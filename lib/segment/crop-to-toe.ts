import type { ReflectanceMap } from '../colour/reflectance-map';
import type { MapGrid } from '../rectify/millimetre-map';
import { CROP_MARGIN_MM, OUTLINE_LOW } from './constants';
import type { TissueFields } from './segmentation';

/** The part of the map that holds the toe, in colours and in tissues. */
export interface ToePart {
  readonly map: ReflectanceMap;
  readonly fields: TissueFields;
}

/**
 * Cuts map and fields down to the part in which any tissue may be. The toe fills about a third of the map, and every
 * step from here on looks at each pixel several times. Places in millimetres stay what they are.
 *
 * @param map the corrected map
 * @param fields tissue fields on the same grid
 * @returns copies of that part, a margin around it; the whole map where no tissue is
 * @example cropToToe(map, fields).fields.grid.widthPx // 214
 */
export function cropToToe(map: ReflectanceMap, fields: TissueFields): ToePart {
  const window = windowOf(fields);
  const cut = <T extends Float32Array | Uint8Array>(plane: T): T => cutOut(plane, fields.grid.widthPx, window);
  const grid = partOf(fields.grid, window);
  return {
    map: { grid, red: cut(map.red), green: cut(map.green), blue: cut(map.blue), seen: cut(map.seen) },
    fields: {
      grid,
      toe: cut(fields.toe),
      nailPlate: cut(fields.nailPlate),
      groove: cut(fields.groove),
      nailUnit: cut(fields.nailUnit),
      foldMargin: cut(fields.foldMargin),
      raw: cut(fields.raw),
      macerated: cut(fields.macerated),
      erythema: cut(fields.erythema),
    },
  };
}

/** First row and column, one past the last. */
interface Window {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

function windowOf({ grid, toe, nailUnit, raw, macerated, erythema }: TissueFields): Window {
  const { widthPx, heightPx } = grid;
  let [top, bottom, left, right] = [heightPx, -1, widthPx, -1];
  for (let row = 0, i = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++, i++) {
      const tissue = toe[i] > OUTLINE_LOW || nailUnit[i] > OUTLINE_LOW || raw[i] > OUTLINE_LOW || macerated[i] > OUTLINE_LOW || erythema[i] > OUTLINE_LOW;
      if (!tissue) continue;
      if (row < top) top = row;
      bottom = row;
      if (column < left) left = column;
      if (column > right) right = column;
    }
  }
  if (bottom < 0) return { top: 0, bottom: heightPx, left: 0, right: widthPx };
  const marginPx = Math.ceil(CROP_MARGIN_MM * grid.pxPerMm);
  return {
    top: Math.max(0, top - marginPx),
    bottom: Math.min(heightPx, bottom + marginPx + 1),
    left: Math.max(0, left - marginPx),
    right: Math.min(widthPx, right + marginPx + 1),
  };
}

function partOf(grid: MapGrid, { top, bottom, left, right }: Window): MapGrid {
  return {
    pxPerMm: grid.pxPerMm,
    originAcrossMm: grid.originAcrossMm + left / grid.pxPerMm,
    originDownMm: grid.originDownMm + top / grid.pxPerMm,
    widthPx: right - left,
    heightPx: bottom - top,
  };
}

function cutOut<T extends Float32Array | Uint8Array>(plane: T, widthPx: number, { top, bottom, left, right }: Window): T {
  const across = right - left;
  const part = new (plane.constructor as new (length: number) => T)(across * (bottom - top));
  for (let row = top; row < bottom; row++) part.set(plane.subarray(row * widthPx + left, row * widthPx + right), (row - top) * across);
  return part;
}
