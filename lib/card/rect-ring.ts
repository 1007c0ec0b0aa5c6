import type { PointMm, RingMm } from '../units';

/**
 * The outline of an upright rectangle, clockwise on the page.
 *
 * @param left mm from the left
 * @param top mm from the top
 * @param width mm
 * @param height mm
 * @returns four corners from the top left.
 * @example rectRing(0, 0, 2, 1)[2] // { acrossMm: 2, downMm: 1 }
 */
export function rectRing(left: number, top: number, width: number, height: number): RingMm {
  return [
    { acrossMm: left, downMm: top },
    { acrossMm: left + width, downMm: top },
    { acrossMm: left + width, downMm: top + height },
    { acrossMm: left, downMm: top + height },
  ];
}

/**
 * The outline of an upright rectangle about its centre, clockwise on the page.
 *
 * @param centre mm
 * @param width mm
 * @param height mm (the width when left out)
 * @returns four corners.
 * @example centredRing({ acrossMm: 1, downMm: 1 }, 2)[0] // { acrossMm: 0, downMm: 0 }
 */
export function centredRing(centre: PointMm, width: number, height: number = width): RingMm {
  return rectRing(centre.acrossMm - width / 2, centre.downMm - height / 2, width, height);
}

/**
 * The same outline run the other way: a hole.
 *
 * @param ring clockwise on the page
 * @returns the same corners, anticlockwise.
 * @example holeOf(rectRing(0, 0, 2, 1))[0] // { acrossMm: 0, downMm: 1 }
 */
export const holeOf = (ring: RingMm): RingMm => [...ring].reverse();
