/** What the camera sees at one place of the picture: the nearest of card, toe, foot, filling of the notch, and ground. */
import type { Scene } from '../scene/build-scene';
import { notchFilling, shadeCard, shadeGround } from '../scene/shade-card';
import { shadeFoot } from '../scene/shade-foot';
import { shadeToe } from '../scene/shade-toe';
import type { ToeHit } from '../scene/trace-toe';

export const TOE = 2, FOOT = 3;
const GROUND = 0, CARD = 1, FILLING = 4, SECOND = 5, COVER = 6;
export const MAYBE_TOE = 1, MAYBE_FOOT = 2;
const UNDISTORTION_STEPS = 1024;
/** How far before the neighbour's hit a ray to the foot begins. */
const FOOT_HEAD_START_MM = 4;

/** Where a cloth lies over the card in the picture of that fault: beyond a wavy line. */
export interface Cover {
  covers(acrossMm: number, downMm: number): boolean;
}

/** `maybe` tells what can be there at all: `MAYBE_TOE`, `MAYBE_FOOT`, both or neither. */
export type Look = (column: number, row: number, out: Float64Array, maybe: number) => number;

/** Prepares a scene to be looked at: the result fills `out` with linear light and says which thing it met. */
export function lookInto(scene: Scene, cover: Cover | null): Look {
  const { camera, card, toe, groundHeightMm, middleMm } = scene;
  const { pupil, right, down, forward, focalPx, middle } = camera;
  const far = Math.max(middle.column, middle.row) * 1.5;
  const most = (2 * far * far) / (focalPx * focalPx);
  const shares = Float64Array.from({ length: UNDISTORTION_STEPS + 2 }, (_, i) => camera.undistortion((i * most) / UNDISTORTION_STEPS));
  const onCard = card === null ? null : shadeCard(scene);
  const onToe = toe === null ? null : shadeToe(scene);
  const onFoot = toe === null ? null : shadeFoot(scene);
  const onGround = shadeGround(scene);
  const filling = notchFilling(scene);
  const fillHeight = scene.spec.subject.kind === 'shapes' ? scene.spec.subject.heightMm : 0;
  const hit: ToeHit = { row: 0, column: 0 };
  const origin = toe?.pose.toToe(pupil) ?? [0, 0, 0];
  const axes = toe?.pose.axes ?? ([[1, 0, 0], [0, 1, 0], [0, 0, 1]] as const);
  const halfWidth = scene.spec.toe.halfWidthMm;
  let lastToe = -1;
  let lastFoot = -1;
  // Reused for every pixel: a new array each time would cost more than the shading.
  const along: [number, number, number] = [0, 0, 0];
  const own: [number, number, number] = [0, 0, 0];
  const point: [number, number, number] = [0, 0, 0];
  const ownPoint: [number, number, number] = [0, 0, 0];
  const view: [number, number, number] = [0, 0, 0];

  /** `pastMm`: how far along the toe the ray crosses the axis's level; near the toes the foot is low. */
  function meetFoot(tLimit: number, pastMm: number): number {
    if (pastMm < -25) return -1;
    const top = own[2] < 0 ? ((pastMm < 20 ? 18 : 58) - origin[2]) / own[2] : 0;
    const near = lastFoot - FOOT_HEAD_START_MM;
    const begin = near > top && toe!.foot.free(origin[0] + near * own[0], origin[1] + near * own[1], origin[2] + near * own[2]) > 1;
    let t = begin ? near : top;
    for (let step = 0; step < 60 && t < tLimit; step++) {
      const gap = toe!.foot.free(origin[0] + t * own[0], origin[1] + t * own[1], origin[2] + t * own[2]);
      if (gap < 0.05) return t;
      t += Math.max(0.3, gap * 0.95);
    }
    return -1;
  }

  return (column, row, out, maybe) => {
    const xd = (column - middle.column) / focalPx, yd = (row - middle.row) / focalPx;
    const at = Math.min(UNDISTORTION_STEPS, ((xd * xd + yd * yd) / most) * UNDISTORTION_STEPS);
    const a = at | 0;
    const share = shares[a] + (shares[a + 1] - shares[a]) * (at - a);
    const x = xd * share, y = yd * share;
    const norm = 1 / Math.sqrt(1 + x * x + y * y);
    for (let k = 0; k < 3; k++) along[k] = (forward[k] + x * right[k] + y * down[k]) * norm;
    if (along[2] > -0.05) {
      out.fill(0.2);
      return GROUND;
    }
    const toCard = -pupil[2] / along[2];
    const toGround = (groundHeightMm - pupil[2]) / along[2];
    const cx = pupil[0] + toCard * along[0], cy = pupil[1] + toCard * along[1];
    if (cover !== null && cover.covers(cx, cy)) {
      onGround(out, cx * 1.7 + 300, cy * 1.7);
      for (let k = 0; k < 3; k++) out[k] = 0.06 + 0.5 * out[k];
      return COVER;
    }
    const meetsCard = card !== null && card.outline.insideMm(cx, cy) > 0;
    let nearest = meetsCard ? toCard : toGround;
    if (toe !== null && maybe !== 0) {
      for (let k = 0; k < 3; k++) own[k] = axes[k][0] * along[0] + axes[k][1] * along[1] + axes[k][2] * along[2];
      // Where the ray passes the axis's level: far from the tube it cannot meet it.
      const pass = -origin[2] / own[2];
      const px = origin[0] + pass * own[0], py = origin[1] + pass * own[1];
      let t = -1;
      const lean = 13 * Math.abs(own[0] / own[2]);
      if ((maybe & MAYBE_TOE) !== 0 && Math.abs(px) < halfWidth * 1.12 + 4 + lean && py > -16 && py < 85) {
        t = toe.tracer.trace(origin[0], origin[1], origin[2], own[0], own[1], own[2], nearest, hit, lastToe);
        if (t >= 0) nearest = t;
        lastToe = t;
      }
      const foot = (maybe & MAYBE_FOOT) === 0 || (meetsCard && py < 40) ? -1 : meetFoot(nearest, py);
      lastFoot = foot;
      if (foot >= 0) {
        for (let k = 0; k < 3; k++) {
          point[k] = pupil[k] + foot * along[k];
          ownPoint[k] = origin[k] + foot * own[k];
        }
        onFoot!(out, point, ownPoint);
        return FOOT;
      }
      if (t >= 0) {
        for (let k = 0; k < 3; k++) {
          point[k] = pupil[k] + t * along[k];
          view[k] = -along[k];
        }
        onToe!(out, hit, point, view);
        return TOE;
      }
    }
    if (meetsCard) {
      onCard!(out, cx, cy);
      return CARD;
    }
    if (filling !== null) {
      const toFilling = (fillHeight - pupil[2]) / along[2];
      const fx = pupil[0] + toFilling * along[0], fy = pupil[1] + toFilling * along[1];
      if (Math.abs(fx - middleMm[0]) < 19 && Math.abs(fy - middleMm[1]) < 26) {
        const second = filling.second(fx, fy);
        filling.shade(out, second, fx, fy);
        return second ? SECOND : FILLING;
      }
    }
    onGround(out, pupil[0] + toGround * along[0], pupil[1] + toGround * along[1]);
    return GROUND;
  };
}
