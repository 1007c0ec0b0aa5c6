import { ARUCO_4X4_50 } from './aruco-4x4-50';
import type { Fiducial } from './card-geometry';
import { cellOutlines } from './cell-outlines';
import { BLACK, MARKER_MODULES } from './constants';
import type { InkedShape } from './inked-shape';

const INNER_MODULES = MARKER_MODULES - 2;

/**
 * The inner modules of a marker of DICT_4X4_50.
 *
 * @param id 0…49
 * @returns four rows of four, true where white. Refuses an id outside the dictionary with a RangeError.
 * @example markerBits(17)[0] // [false, true, true, false]
 */
export function markerBits(id: number): boolean[][] {
  const bits = ARUCO_4X4_50[id];
  if (bits === undefined) throw new RangeError(`markerBits: id must be a whole number 0…49, received ${id}`);
  return Array.from({ length: INNER_MODULES }, (_, row) =>
    Array.from({ length: INNER_MODULES }, (_, column) => {
      const place = INNER_MODULES * INNER_MODULES - 1 - (row * INNER_MODULES + column);
      return ((bits >> place) & 1) === 1;
    }),
  );
}

/**
 * A fiducial as ink: the black square with its white modules left out.
 *
 * @param fiducial place and size in the card's frame, id of DICT_4X4_50
 * @returns one shape; its area is the square less one module per white bit.
 * @example markerShape({ id: 17, centre: { acrossMm: 10, downMm: 10 }, sizeMm: 9 }).rings.length // 2
 */
export function markerShape(fiducial: Fiducial): InkedShape {
  const { centre, sizeMm, id } = fiducial;
  const white = markerBits(id);
  const cells = Array.from({ length: MARKER_MODULES }, (_, row) =>
    Array.from({ length: MARKER_MODULES }, (__, column) => !(white[row - 1]?.[column - 1] ?? false)),
  );
  const topLeft = { acrossMm: centre.acrossMm - sizeMm / 2, downMm: centre.downMm - sizeMm / 2 };
  return { name: `fiducial ${id}`, ink: BLACK, rings: cellOutlines(cells, topLeft, sizeMm / MARKER_MODULES) };
}
