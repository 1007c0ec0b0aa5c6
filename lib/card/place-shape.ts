import type { PointMm } from '../units';
import type { InkedShape } from './inked-shape';

/**
 * The same shape elsewhere, and larger or smaller.
 *
 * @param shape in its own frame
 * @param origin where that frame's top left goes, mm
 * @param scale 1 when left out
 * @returns the shape in the other frame.
 * @example placeShape({ name: 'line', ink: [0, 0, 0], rings: [[{ acrossMm: 3, downMm: 1 }]] }, { acrossMm: 10, downMm: 0 }, 2).rings[0][0] // { acrossMm: 16, downMm: 2 }
 */
export function placeShape(shape: InkedShape, origin: PointMm, scale = 1): InkedShape {
  const rings = shape.rings.map((ring) =>
    ring.map((point) => ({
      acrossMm: origin.acrossMm + point.acrossMm * scale,
      downMm: origin.downMm + point.downMm * scale,
    })),
  );
  return { ...shape, rings };
}
