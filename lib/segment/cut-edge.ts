import type { LineMm, PointMm, RingMm } from '../units';

/** Where the plate's outline is its cut edge: it faces the margin and runs along it. Farther off is the other side. */
const FARTHEST_MM = 6;
/** Nearer than this plate and margin touch: no strip is missing there. */
const TOUCHING_MM = 0.15;

/**
 * The cut edge of the nail plate: for every point of the lateral margin the nearest point of the plate's outline.
 *
 * @param plate outer outline of the plate
 * @param lateralMargin the margin along the side of the nail
 * @returns points in the order of the margin, or null where the plate lies against the margin or far away
 * @example traceCutEdge(plateRing, margin.lateral)?.length
 */
export function traceCutEdge(plate: RingMm, lateralMargin: LineMm): LineMm | null {
  const edge: PointMm[] = [];
  let touching = 0;
  for (const point of lateralMargin) {
    const nearest = nearestOnRing(plate, point);
    const offMm = Math.hypot(nearest.acrossMm - point.acrossMm, nearest.downMm - point.downMm);
    if (offMm < TOUCHING_MM) touching++;
    if (offMm <= FARTHEST_MM) edge.push(nearest);
  }
  return edge.length < 2 || touching > lateralMargin.length / 2 ? null : edge;
}

function nearestOnRing(ring: RingMm, point: PointMm): PointMm {
  let [bestAcross, bestDown] = [ring[0].acrossMm, ring[0].downMm];
  let bestSquared = Infinity;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i];
    const b = ring[(i + 1) % ring.length];
    const across = b.acrossMm - a.acrossMm;
    const down = b.downMm - a.downMm;
    const lengthSquared = across * across + down * down || 1;
    const share = Math.min(1, Math.max(0, ((point.acrossMm - a.acrossMm) * across + (point.downMm - a.downMm) * down) / lengthSquared));
    const [atAcross, atDown] = [a.acrossMm + share * across, a.downMm + share * down];
    const squared = (atAcross - point.acrossMm) ** 2 + (atDown - point.downMm) ** 2;
    if (squared < bestSquared) [bestAcross, bestDown, bestSquared] = [atAcross, atDown, squared];
  }
  return { acrossMm: bestAcross, downMm: bestDown };
}
