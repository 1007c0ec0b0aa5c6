import { FOLD_STRIP_MM } from './constants';
import type { FoldSide } from './fold-side';
import { facingLens, type ToeRelief } from './toe-relief';

/** Places looked at across the strip. */
const STEPS_OUT = 8;

/**
 * How much of the strip beside the treated margin the camera could see: with the phone leaning over from the other side of
 * the toe the fold's outer part turns away from it.
 *
 * @param fold the margin with its sides
 * @param relief the toe's body and the lens; null where the body is not known
 * @returns 0…1, in projected area; 0 where the margin itself is turned away; null without a body
 * Assumes the same body as `straightenPoint`: swelling that stands out beyond it is not foreseen.
 * @example foldSeenShare(fold, null) // null
 */
export function foldSeenShare(fold: FoldSide, relief: ToeRelief | null): number | null {
  if (relief === null) return null;
  let seen = 0;
  let all = 0;
  fold.line.slice(1, -1).forEach((at, i) => {
    const [before, after] = [fold.line[i], fold.line[i + 2]];
    const lengthMm = Math.hypot(after.acrossMm - before.acrossMm, after.downMm - before.downMm);
    const normal = { acrossMm: (after.downMm - before.downMm) / lengthMm, downMm: -(after.acrossMm - before.acrossMm) / lengthMm };
    for (const side of [-1, 1]) {
      for (let step = 1; step <= STEPS_OUT; step++) {
        const out = (side * step * FOLD_STRIP_MM) / STEPS_OUT;
        const point = { acrossMm: at.acrossMm + out * normal.acrossMm, downMm: at.downMm + out * normal.downMm };
        if ((fold.outMm(point) ?? -1) <= 0) continue;
        const facing = facingLens(relief, point);
        if (facing !== 'besideToe') all++;
        if (facing === 'seen') seen++;
      }
    }
  });
  return all === 0 ? 0 : seen / all;
}
