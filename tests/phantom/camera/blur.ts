/** Softness of the picture in linear light: optics as a bell, defocus as a disc, motion as a line. */
import type { CameraSpec } from '../phantom-spec';
import type { LinearPicture } from './expose';

function bellWeights(sigma: number): Float32Array {
  const reach = Math.max(1, Math.ceil(2.7 * sigma));
  const weights = Float32Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-0.5 * ((i - reach) / sigma) ** 2));
  const total = weights.reduce((sum, w) => sum + w, 0);
  return weights.map((weight) => weight / total);
}

function blurRows({ widthPx, heightPx, rgb }: LinearPicture, weights: Float32Array): Float32Array {
  const target = new Float32Array(rgb.length);
  const reach = (weights.length - 1) / 2;
  for (let row = 0; row < heightPx; row++) {
    const start = row * widthPx * 3;
    for (let column = 0; column < widthPx; column++) {
      let r = 0, g = 0, b = 0;
      for (let j = -reach; j <= reach; j++) {
        const at = column + j;
        const from = start + 3 * (at < 0 ? 0 : at >= widthPx ? widthPx - 1 : at);
        const weight = weights[j + reach];
        r += weight * rgb[from];
        g += weight * rgb[from + 1];
        b += weight * rgb[from + 2];
      }
      const to = start + 3 * column;
      target[to] = r;
      target[to + 1] = g;
      target[to + 2] = b;
    }
  }
  return target;
}

function blurColumns(rgb: Float32Array, widthPx: number, heightPx: number, weights: Float32Array): Float32Array {
  const target = new Float32Array(rgb.length);
  const reach = (weights.length - 1) / 2;
  const length = widthPx * 3;
  for (let row = 0; row < heightPx; row++) {
    const to = row * length;
    for (let j = -reach; j <= reach; j++) {
      const from = Math.min(heightPx - 1, Math.max(0, row + j)) * length;
      const weight = weights[j + reach];
      for (let i = 0; i < length; i++) target[to + i] += weight * rgb[from + i];
    }
  }
  return target;
}

/** Blurs with a bell of the given standard deviation in pixels. */
export function blurBell(picture: LinearPicture, sigmaPx: number): LinearPicture {
  if (sigmaPx < 0.15) return picture;
  const weights = bellWeights(sigmaPx);
  const { widthPx, heightPx } = picture;
  return { ...picture, rgb: blurColumns(blurRows(picture, weights), widthPx, heightPx, weights) };
}

/** Averages over shifted copies; each shift is a whole number of pixels. */
function blurShifts(picture: LinearPicture, shifts: readonly (readonly [number, number])[]): LinearPicture {
  const { widthPx, heightPx, rgb } = picture;
  const target = new Float32Array(rgb.length);
  const length = 3 * widthPx;
  for (const [dx, dy] of shifts) {
    for (let row = 0; row < heightPx; row++) {
      const fromRow = Math.min(heightPx - 1, Math.max(0, row + dy));
      const to = row * length;
      const shift = (fromRow - row) * length + 3 * dx;
      const start = to + Math.max(0, -3 * dx);
      const end = to + length - Math.max(0, 3 * dx);
      for (let i = start; i < end; i++) target[i] += rgb[i + shift];
      // Beyond the picture its border goes on.
      for (let i = to; i < start; i++) target[i] += rgb[fromRow * length + (i % 3)];
      for (let i = end; i < to + length; i++) target[i] += rgb[fromRow * length + length - 3 + (i % 3)];
    }
  }
  for (let i = 0; i < target.length; i++) target[i] /= shifts.length;
  return { ...picture, rgb: target };
}

function discShifts(radius: number): [number, number][] {
  const reach = Math.ceil(radius);
  const step = Math.max(1, Math.floor(radius / 5));
  const shifts: [number, number][] = [];
  for (let dy = -reach; dy <= reach; dy += step) {
    for (let dx = -reach; dx <= reach; dx += step) if (Math.hypot(dx, dy) <= radius) shifts.push([dx, dy]);
  }
  return shifts;
}

function lineShifts(lengthPx: number, turnDeg: number): [number, number][] {
  const turn = (turnDeg * Math.PI) / 180;
  const count = Math.max(2, Math.round(lengthPx));
  return Array.from({ length: count }, (_, i) => {
    const at = lengthPx * (i / (count - 1) - 0.5);
    return [Math.round(at * Math.cos(turn)), Math.round(at * Math.sin(turn))];
  });
}

/** All the softness of a camera. */
export function soften(picture: LinearPicture, camera: CameraSpec): LinearPicture {
  let soft = picture;
  if (camera.defocusPx >= 1) soft = blurShifts(soft, discShifts(camera.defocusPx));
  if (camera.motionPx >= 1) soft = blurShifts(soft, lineShifts(camera.motionPx, camera.motionDeg));
  return blurBell(soft, camera.opticsBlurPx);
}

/**
 * 10–90 % width of an edge from the variances of all three, across the shake, in pixels; exact for the bell alone. The
 * shifts are whole pixels, so a shake of little more than a pixel moves the picture by two: what is drawn counts.
 */
export function edgeSpreadPx(camera: CameraSpec): number {
  const disc = camera.defocusPx >= 1 ? meanSquare(discShifts(camera.defocusPx)) / 2 : 0;
  const line = camera.motionPx >= 1 ? meanSquare(lineShifts(camera.motionPx, camera.motionDeg)) : 0;
  return 2.563 * Math.sqrt(camera.opticsBlurPx ** 2 + disc + line);
}

const meanSquare = (shifts: readonly (readonly [number, number])[]): number => shifts.reduce((sum, [dx, dy]) => sum + dx * dx + dy * dy, 0) / shifts.length;
