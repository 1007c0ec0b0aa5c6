import { randomSource } from './random-source';

/** A smooth random field: lattice values joined by quintic weights, roughly −1…1 with mean 0. */
export type NoiseField = (u: number, v: number) => number;

const SIDE = 256;
const WRAP = SIDE - 1;

/** One table for all fields, −1…1; a seed decides which part of it a field begins at. */
const LATTICE = ((): Float32Array => {
  const random = randomSource(20260302, 'lattice');
  return Float32Array.from({ length: SIDE * SIDE }, () => random.between(-1, 1));
})();

/** One octave; the lattice has one value per unit of u and v, and repeats after 256 units. */
export function valueNoise(seed: number): NoiseField {
  const start = randomSource(seed, 'noise field');
  const shiftU = start.whole(0, WRAP);
  const shiftV = start.whole(0, WRAP);
  return (u, v) => {
    const column = Math.floor(u);
    const row = Math.floor(v);
    const a = u - column;
    const b = v - row;
    const wa = a * a * a * (a * (a * 6 - 15) + 10);
    const wb = b * b * b * (b * (b * 6 - 15) + 10);
    const left = (column + shiftU) & WRAP;
    const right = (left + 1) & WRAP;
    const upper = ((row + shiftV) & WRAP) * SIDE;
    const lower = ((row + shiftV + 1) & WRAP) * SIDE;
    const top = LATTICE[upper + left] + (LATTICE[upper + right] - LATTICE[upper + left]) * wa;
    return top + (LATTICE[lower + left] + (LATTICE[lower + right] - LATTICE[lower + left]) * wa - top) * wb;
  };
}

/** Several octaves, each twice as fine and half as strong, scaled back to about −1…1. */
export function layeredNoise(seed: number, octaves: number): NoiseField {
  const layers = Array.from({ length: octaves }, (_, i) => valueNoise(seed * 31 + i * 7919));
  const total = 2 - 2 ** (1 - octaves);
  return (u, v) => {
    let sum = 0;
    let scale = 1;
    for (let i = 0; i < octaves; i++) {
      sum += layers[i](u * scale, v * scale) / scale;
      scale *= 2;
    }
    return sum / total;
  };
}
