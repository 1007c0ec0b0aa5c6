/** Long edges, pixels, of the grey copies searched in turn until enough of the card is found. */
const SEARCH_LONG_EDGES_PX = [1000, 2000, 4032] as const;

/**
 * Photo pixels for one pixel of each copy, the smallest copy first.
 * @example searchShrinks(4032) // [4, 2, 1]
 */
export function searchShrinks(longEdgePx: number): number[] {
  return [...new Set(SEARCH_LONG_EDGES_PX.map((target) => Math.max(1, Math.round(longEdgePx / target))))];
}

/**
 * That of the copy searched first.
 * @example searchShrink(4032) // 4
 */
export const searchShrink = (longEdgePx: number): number => searchShrinks(longEdgePx)[0];
