/** A smooth random field: lattice values joined by quintic weights, roughly −1…1 with mean 0. */
export type NoiseField = (u: number, v: number) => number;

function latticeValue(column: number, row: number, seed: number): number {
  let hash = Math.imul(column, 374761393) + Math.imul(row, 668265263) + Math.imul(seed, 974634777);
  hash = Math.imul(hash ^ (hash >>> 13), 1274126177);
  hash = Math.imul(hash ^ (hash >>> 16), 1911520717);
  return ((hash ^ (hash >>> 15)) >>> 0) / 2147483648 - 1;
}

/** One octave; the lattice has one value per unit of u and v. */
export function valueNoise(seed: number): NoiseField {
  return (u, v) => {
    const column = Math.floor(u);
    const row = Math.floor(v);
    const a = u - column;
    const b = v - row;
    const wa = a * a * a * (a * (a * 6 - 15) + 10);
    const wb = b * b * b * (b * (b * 6 - 15) + 10);
    const top = latticeValue(column, row, seed) * (1 - wa) + latticeValue(column + 1, row, seed) * wa;
    const bottom = latticeValue(column, row + 1, seed) * (1 - wa) + latticeValue(column + 1, row + 1, seed) * wa;
    return top * (1 - wb) + bottom * wb;
  };
}

/** Several octaves, each twice as fine and half as strong, scaled back to about −1…1. */
export function layeredNoise(seed: number, octaves: number): NoiseField {
  const layers = Array.from({ length: octaves }, (_, i) => valueNoise(seed * 31 + i * 7919));
  const total = 2 - 2 ** (1 - octaves);
  return (u, v) => {
    let sum = 0;
    let scale = 1;
    for (const layer of layers) {
      sum += layer(u * scale + 17.3 * scale, v * scale - 9.1 * scale) / scale;
      scale *= 2;
    }
    return sum / total;
  };
}
