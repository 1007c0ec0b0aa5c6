import type { MapGrid } from '../rectify/millimetre-map';

/**
 * Redness load: the excess of the erythema index summed over an area. It hardly depends on where the edge was drawn,
 * and falls when redness fades without shrinking.
 *
 * @param excessEi erythema index above the reference field per pixel; NaN where there is none. Values below the
 * reference count as they are: cutting them off would turn noise into redness
 * @param grid the map
 * @param mask 1 where it is summed: the region and its rim
 * @returns EI · mm²
 * @example rednessLoad(Float32Array.of(3), { originAcrossMm: 0, originDownMm: 0, pxPerMm: 1, widthPx: 1, heightPx: 1 }, Uint8Array.of(1)) // 3
 */
export function rednessLoad(excessEi: Float32Array, grid: MapGrid, mask: Uint8Array): number {
  let sum = 0;
  for (let index = 0; index < mask.length; index += 1) {
    if (mask[index] === 1 && Number.isFinite(excessEi[index])) sum += excessEi[index];
  }
  return sum / grid.pxPerMm ** 2;
}
