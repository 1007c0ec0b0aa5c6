import type { LinearRgb } from './encodings';

/**
 * Light relative to paper, and the paper's own light: their product is light relative to a perfect diffuser.
 * @param light linear light relative to a white
 * @param white linear light of that white
 * @returns linear light relative to what the white is relative to
 * @example scaleLight({ red: 0.5, green: 1, blue: 1 }, { red: 0.8, green: 0.8, blue: 0.8 }).red // 0.4
 */
export function scaleLight(light: LinearRgb, white: LinearRgb): LinearRgb {
  return { red: light.red * white.red, green: light.green * white.green, blue: light.blue * white.blue };
}
