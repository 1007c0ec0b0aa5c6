/** A cloth that has slipped over the card so far that at most three of its black squares are left. */
import type { Cover } from '../camera/look-into';
import { valueNoise } from '../random/value-noise';
import { randomSource } from '../random/random-source';
import type { Scene } from './build-scene';

const LEFT_SQUARES = 3;

/** The cloth of a scene: it comes from a random side and has a wavy hem. */
export function clothOver(scene: Scene): Cover {
  const random = randomSource(scene.spec.seed, 'cloth');
  const turn = random.between(0, 2 * Math.PI);
  const [nx, ny] = [Math.cos(turn), Math.sin(turn)];
  const squares = scene.face.geometry.fiducials
    .map(({ centre, sizeMm }) => centre.acrossMm * nx + centre.downMm * ny - sizeMm * 0.35)
    .sort((a, b) => a - b);
  const hem = squares[LEFT_SQUARES] - 2;
  const wave = valueNoise(scene.spec.seed + 301);
  return {
    covers: (acrossMm, downMm) => acrossMm * nx + downMm * ny > hem + 1.5 * wave((acrossMm * -ny + downMm * nx) * 0.08, 0),
  };
}
