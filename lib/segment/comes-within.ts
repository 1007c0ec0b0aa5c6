import { isInsideOutline } from '../rectify/inside-outline';
import type { LineMm, RingMm } from '../units';

/**
 * Does an outline come within a distance of a line, or hold a point of it? Both are judged by their points, which lie
 * closer together than any distance asked about here.
 *
 * @param outline closed, mm
 * @param line open or closed, mm
 * @param withinMm distance, ≥ 0
 * @example comesWithin(ring, margin.line, 1) // true
 */
export function comesWithin(outline: RingMm, line: LineMm, withinMm: number): boolean {
  const square = withinMm * withinMm;
  const touches = line.some((point) => outline.some((p) => (p.acrossMm - point.acrossMm) ** 2 + (p.downMm - point.downMm) ** 2 <= square));
  return touches || line.some((point) => isInsideOutline(point, outline));
}
