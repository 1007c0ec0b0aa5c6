import { BOUNDARY_COMMON_SHARE } from './constants';

/**
 * Splits where an outline may lie into what moves all of it one way and what wobbles along it.
 *
 * @param boundaryUMm standard uncertainty of one place of the outline, mm, ≥ 0
 * @returns common and local part, mm; their root sum of squares is boundaryUMm
 * @example splitBoundary(0.2).commonMm // 0.141
 */
export function splitBoundary(boundaryUMm: number): { readonly commonMm: number; readonly localMm: number } {
  return {
    commonMm: boundaryUMm * Math.sqrt(BOUNDARY_COMMON_SHARE),
    localMm: boundaryUMm * Math.sqrt(1 - BOUNDARY_COMMON_SHARE),
  };
}
