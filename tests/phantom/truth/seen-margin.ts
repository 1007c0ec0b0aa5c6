/** The treated nail-fold margin where a camera shows it, which is beside its place when the camera leans. */
import { toCard, type Homography } from '../../../lib/rectify/homography';
import type { LineOfPairs, PairMm } from '../phantom-truth';
import type { Scene } from '../scene/build-scene';
import { skinToToe } from '../scene/toe-surface';
import { fitPlane } from './fit-plane';

const STEPS = 240;
const CORNERS: LineOfPairs = [[0, 0], [85.6, 0], [85.6, 53.98], [0, 53.98], [42.8, 27]];

/** Read back from the picture in the card's plane, mm, from the distal end to the middle of the proximal fold. */
export function seenMargin(scene: Scene): LineOfPairs {
  const { surface, pose } = scene.toe!;
  const onPicture = (point: readonly [number, number, number]): PairMm => {
    const { column, row } = scene.camera.project(point, false);
    return [column, row];
  };
  const cardFromPicture = fitPlane(CORNERS.map(([across, down]) => onPicture([across, down, 0])), CORNERS) as unknown as Homography;
  return Array.from({ length: STEPS + 1 }, (_, i): PairMm => {
    const [column, row] = onPicture(pose.toCard(skinToToe(surface, surface.nail.marginPoint(surface.nail.treated, i / STEPS))));
    const { acrossMm, downMm } = toCard(cardFromPicture, { column, row });
    return [acrossMm, downMm];
  });
}
