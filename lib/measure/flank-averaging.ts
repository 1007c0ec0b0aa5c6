import { BOUNDARY_CORRELATION_MM } from './constants';

/**
 * How much of the wobble along an edge is left in a high percentile of its distance.
 *
 * The places beyond the percentile form one front; its level is decided where the edge crosses it, on two flanks as
 * far apart as the front is long. The mean of two errors with correlation ρ keeps √((1 + ρ) / 2) of one. Several
 * fronts would average more: counting one is the cautious case.
 *
 * @param frontMm length of edge beyond the percentile, mm, ≥ 0
 * @returns 0.7…1; 1 for a front so short that both flanks err together
 * ρ = exp(−π · (front / L)²), the Gaussian of integral scale L. Source: variance of a mean of two, JCGM 100:2008, 5.2.2.
 * @example flankAveraging(1) // 0.8532
 */
export function flankAveraging(frontMm: number): number {
  if (!(frontMm >= 0)) throw new RangeError(`flankAveraging: frontMm must be ≥ 0, received ${frontMm}`);
  const correlation = Math.exp(-Math.PI * (frontMm / BOUNDARY_CORRELATION_MM) ** 2);
  return Math.sqrt((1 + correlation) / 2);
}
