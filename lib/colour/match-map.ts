import type { ColourMatch } from './match-to-baseline';
import type { ReflectanceMap } from './reflectance-map';

/**
 * Brings a map to the colours of the baseline photo.
 * @param map light relative to paper
 * @param match the linear map found from the card's patches
 * @returns the map with every pixel multiplied by the match's matrix; the same map where the match is `none`
 * @example matchMap(map, matchToBaseline([], [])) === map // true
 */
export function matchMap(map: ReflectanceMap, match: ColourMatch): ReflectanceMap {
  if (match.kind === 'none') return map;
  const [[rr, rg, rb], [gr, gg, gb], [br, bg, bb]] = match.matrix;
  const [red, green, blue] = [0, 1, 2].map(() => new Float32Array(map.red.length));
  for (let pixel = 0; pixel < map.red.length; pixel += 1) {
    const r = map.red[pixel];
    const g = map.green[pixel];
    const b = map.blue[pixel];
    red[pixel] = rr * r + rg * g + rb * b;
    green[pixel] = gr * r + gg * g + gb * b;
    blue[pixel] = br * r + bg * g + bb * b;
  }
  return { grid: map.grid, red, green, blue, seen: map.seen };
}
