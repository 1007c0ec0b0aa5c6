import type { RandomSource } from '../../phantom/random/random-source';
import { toImage } from '../../../lib/rectify/homography';
import { type CameraSpec, imageFromCardOf, LEVEL_CAMERA } from '../../unit/rectify/synthetic-camera';

const EDGE = [[0, 0], [85.6, 0], [85.6, 53.98], [0, 53.98]].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));

/** A camera whose picture just holds the whole card, with some room around it. */
export function framed(camera: Omit<CameraSpec, 'widthPx' | 'heightPx'>, roomPx = 8): CameraSpec {
  const wide = imageFromCardOf({ ...camera, widthPx: 1, heightPx: 1 });
  const seen = EDGE.map((point) => toImage(wide, point));
  const half = (of: (p: { row: number; column: number }) => number): number => Math.max(...seen.map((p) => Math.abs(of(p))));
  return { ...camera, widthPx: 2 * Math.ceil(half((p) => p.column) + roomPx), heightPx: 2 * Math.ceil(half((p) => p.row) + roomPx) };
}

/** A phone held over the card as a patient might: turned near one of the four upright ways, 6–25 px/mm, mostly few. */
export function patientView(random: RandomSource, tiltDeg: number): CameraSpec {
  const pxPerMm = 6 * (25 / 6) ** random.next() ** 3;
  return framed({
    ...LEVEL_CAMERA,
    pxPerMm,
    // 24–28 mm equivalent at 12 megapixels fixes the distance.
    distanceMm: (random.between(24, 28) * 5040) / 43.27 / pxPerMm,
    tiltDeg,
    azimuthDeg: random.between(0, 360),
    rollDeg: 90 * random.whole(0, 3) + random.between(-12, 12),
  });
}
