import type { PointMm } from '../units';
import type { InkedShape } from './inked-shape';

/**
 * The same shape elsewhere, and larger or smaller.
 *
 * @param shape in its own frame, @param origin where that frame's top left goes, mm, @param scale 1 when left out
 * @returns the shape in the other frame. Example: at `{ acrossMm: 10, downMm: 0 }` a point at 2 mm across comes to 12.
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
