import type { BudgetTerm } from './combine-budget';
import { BOUNDARY_CORRELATION_MM } from './constants';
import { splitBoundary } from './split-boundary';
import { uOfHalfWidth } from './u-of-half-width';

/**
 * What the outline's uncertainty does to an area.
 *
 * An error that moves the whole edge one way changes the area by perimeter · error. One that wobbles along the edge
 * averages out: over a perimeter P it is the sum of P / L independent stretches of length L, so P · u · √(L / P).
 * Pixels do the same on their own small scale: each of P · n pixels along the edge is in or out by ± half a pixel.
 *
 * @param perimeterMm length of all edges, holes included, mm
 * @param boundaryUMm standard uncertainty of one place of the outline, mm
 * @param pxPerMm what the photo resolves
 * @returns terms boundaryCommon, boundaryLocal, sampling, mm²
 * Source: variance of the integral of a stationary process, e.g. Yaglom 1987; JCGM 100:2008, 4.3.7.
 * @example areaTerms(8, 0.2, 12)[0].sensitivity // 8
 */
export function areaTerms(perimeterMm: number, boundaryUMm: number, pxPerMm: number): BudgetTerm[] {
  const { commonMm, localMm } = splitBoundary(boundaryUMm);
  const pixelMm2 = 1 / pxPerMm ** 2;
  const together = Math.min(perimeterMm, BOUNDARY_CORRELATION_MM);
  return [
    { name: 'boundaryCommon', u: commonMm, sensitivity: perimeterMm },
    { name: 'boundaryLocal', u: localMm, sensitivity: Math.sqrt(perimeterMm * together) },
    { name: 'sampling', u: uOfHalfWidth(pixelMm2 / 2, 'rectangular'), sensitivity: Math.sqrt(perimeterMm * pxPerMm) },
  ];
}
