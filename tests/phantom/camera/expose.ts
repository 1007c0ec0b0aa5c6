/** The picture on the sensor: one ray for each pixel, sixteen where two things meet, in linear light. */
import type { Scene } from '../scene/build-scene';
import { FOOT, lookInto, MAYBE_FOOT, MAYBE_TOE, TOE, type Cover, type Look } from './look-into';

export interface LinearPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Linear sRGB, three per pixel; 1 is a perfect white, lit as in the middle of the card. */
  readonly rgb: Float32Array;
}

const SUBSAMPLES = 4;
/** Pixels between the scouting rays that find out what can be where. */
const SCOUT_STEP = 8;

/** One ray for every block of pixels; a thing seen in a block may be in that block and in its eight neighbours. */
function scout(widthPx: number, heightPx: number, look: Look): (column: number, row: number) => number {
  const columns = Math.ceil(widthPx / SCOUT_STEP) + 1;
  const rows = Math.ceil(heightPx / SCOUT_STEP) + 1;
  const maybe = new Uint8Array(columns * rows);
  const out = new Float64Array(3);
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const thing = look(c * SCOUT_STEP, r * SCOUT_STEP, out, MAYBE_TOE | MAYBE_FOOT);
      const seen = thing === TOE ? MAYBE_TOE : thing === FOOT ? MAYBE_FOOT : 0;
      if (seen === 0) continue;
      for (let i = Math.max(0, r - 1); i <= Math.min(rows - 1, r + 1); i++) {
        for (let j = Math.max(0, c - 1); j <= Math.min(columns - 1, c + 1); j++) maybe[i * columns + j] |= seen;
      }
    }
  }
  return (column, row) => maybe[Math.round(row / SCOUT_STEP) * columns + Math.round(column / SCOUT_STEP)];
}

function smoothEdges(picture: LinearPicture, things: Uint8Array, look: Look, maybe: (column: number, row: number) => number): void {
  const { widthPx, heightPx, rgb } = picture;
  const out = new Float64Array(3);
  for (let row = 1; row < heightPx - 1; row++) {
    for (let column = 1; column < widthPx - 1; column++) {
      const i = row * widthPx + column;
      const thing = things[i];
      if (thing === things[i - 1] && thing === things[i + 1] && thing === things[i - widthPx] && thing === things[i + widthPx]) continue;
      const sum = [0, 0, 0];
      const possible = maybe(column, row);
      for (let s = 0; s < SUBSAMPLES * SUBSAMPLES; s++) {
        look(column + ((s % SUBSAMPLES) + 0.5) / SUBSAMPLES - 0.5, row + (Math.floor(s / SUBSAMPLES) + 0.5) / SUBSAMPLES - 0.5, out, possible);
        for (let k = 0; k < 3; k++) sum[k] += out[k];
      }
      for (let k = 0; k < 3; k++) rgb[i * 3 + k] = sum[k] / (SUBSAMPLES * SUBSAMPLES);
    }
  }
}

/** Renders the scene in linear light, before optics and electronics. */
export function expose(scene: Scene, cover: Cover | null = null): LinearPicture {
  const { widthPx, heightPx } = scene.spec.camera;
  const rgb = new Float32Array(widthPx * heightPx * 3);
  const things = new Uint8Array(widthPx * heightPx);
  const look = lookInto(scene, cover);
  const maybe = scout(widthPx, heightPx, look);
  const out = new Float64Array(3);
  for (let row = 0, i = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++, i++) {
      things[i] = look(column, row, out, maybe(column, row));
      rgb[i * 3] = out[0];
      rgb[i * 3 + 1] = out[1];
      rgb[i * 3 + 2] = out[2];
    }
  }
  const picture = { widthPx, heightPx, rgb };
  smoothEdges(picture, things, look, maybe);
  return picture;
}
