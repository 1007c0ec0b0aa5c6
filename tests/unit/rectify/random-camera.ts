import type { RandomSource } from '../../phantom/random/random-source';
import { type CameraSpec, LEVEL_CAMERA } from './synthetic-camera';

/** A phone held over the card: 6–25 px/mm, 150–450 mm away, turned anyhow, leaning by up to `mostTiltDeg`. */
export function randomCamera(random: RandomSource, mostTiltDeg: number): CameraSpec {
  return {
    ...LEVEL_CAMERA,
    widthPx: 4032,
    heightPx: 3024,
    pxPerMm: random.between(6, 25),
    distanceMm: random.between(150, 450),
    lookAt: { acrossMm: random.between(35, 50), downMm: random.between(20, 40) },
    tiltDeg: random.between(0, mostTiltDeg),
    azimuthDeg: random.between(0, 360),
    rollDeg: random.between(0, 360),
  };
}
