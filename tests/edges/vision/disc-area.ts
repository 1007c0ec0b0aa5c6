import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import type { Homography } from '../../../lib/rectify/homography';
import { LINEAR_LIGHT } from '../../../lib/rectify/linear-light';
import { resampleMap } from '../../../lib/rectify/resample-map';
import { DISC } from './draw-card-photo';

const PX_PER_MM = 8;
const HALF_MM = DISC.radiusMm + 2.5;

/** Area of the printed disc on the millimetre map: the light it takes away, over what full ink takes away. */
export function discAreaMm2(photo: UprightPhoto, imageFromCard: Homography): number {
  const sidePx = Math.round(2 * HALF_MM * PX_PER_MM) + 1;
  const grid = {
    originAcrossMm: DISC.centre.acrossMm - HALF_MM,
    originDownMm: DISC.centre.downMm - HALF_MM,
    pxPerMm: PX_PER_MM,
    widthPx: sidePx,
    heightPx: sidePx,
  };
  const tables = { red: LINEAR_LIGHT, green: LINEAR_LIGHT, blue: LINEAR_LIGHT };
  const { green } = resampleMap(photo, imageFromCard, grid, tables);
  const paper = shadedPaper(green, sidePx);
  const radiusMm = (i: number): number => Math.hypot((i % sidePx) / PX_PER_MM - HALF_MM, Math.floor(i / sidePx) / PX_PER_MM - HALF_MM);
  // Share of its paper that each place still reflects: shade falls out.
  const share = green.map((light, i) => light / paper(i));
  const core = share.filter((_, i) => radiusMm(i) < DISC.radiusMm - 1.5);
  const ink = core.reduce((sum, one) => sum + one, 0) / core.length;
  return share.reduce((sum, one, i) => sum + (radiusMm(i) < HALF_MM ? (1 - one) / (1 - ink) : 0), 0) / PX_PER_MM ** 2;
}

/** Paper under the disc, a plane through the light of the ring around it. */
function shadedPaper(light: Float32Array, sidePx: number): (i: number) => number {
  const middle = (sidePx - 1) / 2;
  let [n, sum, xx, xl, yl] = [0, 0, 0, 0, 0];
  light.forEach((value, i) => {
    const [x, y] = [(i % sidePx) - middle, Math.floor(i / sidePx) - middle];
    const radiusMm = Math.hypot(x, y) / PX_PER_MM;
    if (radiusMm < HALF_MM - 1 || radiusMm > HALF_MM) return;
    n++;
    sum += value;
    xx += x * x;
    xl += x * value;
    yl += y * value;
  });
  return (i) => sum / n + (xl / xx) * ((i % sidePx) - middle) + (yl / xx) * (Math.floor(i / sidePx) - middle);
}
