import type { ReflectanceMap } from './reflectance-map';

/** 100 / ln 10: natural logarithm of a ratio to erythema index. */
const PER_LN = 100 / Math.LN10;

/**
 * Erythema index of every pixel of the map (see `erythemaIndex` for the measure and its sources).
 * @param map light relative to paper
 * @returns plane of 100 · (log10 R − log10 G); NaN where the place is not seen or red or green has no light
 * @example erythemaIndexMap(map)[0] // 0
 */
export function erythemaIndexMap(map: ReflectanceMap): Float32Array {
  const { red, green, seen } = map;
  const index = new Float32Array(red.length).fill(NaN);
  for (let pixel = 0; pixel < red.length; pixel += 1) {
    if (seen[pixel] === 1 && red[pixel] > 0 && green[pixel] > 0) {
      index[pixel] = PER_LN * Math.log(red[pixel] / green[pixel]);
    }
  }
  return index;
}
