/** Which pieces of redness belong to the treated fold, and which lie somewhere else. */
import type { LineOfPairs, TruthRing } from '../phantom-truth';
import { distanceToLineMm } from './line-distance';
import type { Piece } from './zero-outline';

/** A piece belongs to the fold when it comes this near to the margin. */
const SATELLITE_MM = 1;

/** Even–odd rule over a ring and points of another one that lies within it or elsewhere, but does not cross it. */
function holds(outer: LineOfPairs, ring: LineOfPairs): boolean {
  const votes = ring.filter(([x, y]) => {
    let inside = false;
    for (let i = 0, j = outer.length - 1; i < outer.length; j = i++) {
      const [ax, ay] = outer[j], [bx, by] = outer[i];
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    }
    return inside;
  });
  return votes.length > ring.length / 3;
}

/** Pieces of redness that belong to the treated fold: what hides under raw or soaked skin still joins them to it. */
export function joinedPieces(visible: readonly Piece[], whole: readonly Piece[], margin: LineOfPairs): { joined: TruthRing[]; satellites: TruthRing[] } {
  const atFold = whole.filter((piece) => piece[0].ring.some((point) => distanceToLineMm(point, margin) < SATELLITE_MM));
  const joined: TruthRing[] = [];
  const satellites: TruthRing[] = [];
  for (const piece of visible) (atFold.some(([outer]) => holds(outer.ring, piece[0].ring)) ? joined : satellites).push(...piece);
  return { joined, satellites };
}
