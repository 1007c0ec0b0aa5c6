import type { SnappedOutline } from '../../../../lib/server/command-snap-outline';
import type { ShownVersion } from '../../../../lib/server/shown-episode';
import type { CardWindow } from '../../../_components/css-matrix';

type Points = NonNullable<ShownVersion['points']['erythema']>;
export type SetPoint = Points[number];
type Line = NonNullable<SnappedOutline['line']>;

/** Where on the card somebody pressed: `cardPlace({ x: 5, y: 5 }, rectangle, window)`. */
export function cardPlace(at: { readonly x: number; readonly y: number }, frame: DOMRect, window: CardWindow): { acrossMm: number; downMm: number } {
  return {
    acrossMm: window.acrossMm + ((at.x - frame.left) / frame.width) * window.widthMm,
    downMm: window.downMm + ((at.y - frame.top) / frame.height) * window.heightMm,
  };
}

const apart = (a: SetPoint, b: SetPoint): number => Math.hypot(a.acrossMm - b.acrossMm, a.downMm - b.downMm);

/** The points with one more, put in where it makes the line least longer; an open line may grow at either end. */
export function withPoint(points: readonly SetPoint[], added: SetPoint, closed: boolean): { points: SetPoint[]; at: number } {
  const ways = Array.from({ length: points.length + 1 }, (_, at) => {
    const [before, after] = [points[at - 1] ?? (closed ? points[points.length - 1] : undefined), points[at] ?? (closed ? points[0] : undefined)];
    const longer = (before ? apart(before, added) : 0) + (after ? apart(added, after) : 0) - (before && after ? apart(before, after) : 0);
    return { at, longer };
  });
  // The first way in is as good as the last: a line is begun where the first point was set.
  const { at } = ways.reduce((best, one) => (one.longer <= best.longer ? one : best));
  return { points: [...points.slice(0, at), added, ...points.slice(at)], at };
}

/** Points along a line that is there already, a few millimetres apart, to begin from. */
export function pointsAlong(line: Line, closed: boolean): SetPoint[] {
  const count = Math.min(MOST, Math.max(closed ? 6 : 4, Math.round(lengthOf(line) / SPACING_MM)));
  const step = (line.length - (closed ? 0 : 1)) / (closed ? count : count - 1);
  return Array.from({ length: count }, (_, i) => {
    const [acrossMm, downMm] = line[Math.min(line.length - 1, Math.round(i * step))];
    return { acrossMm, downMm, held: false };
  });
}

const SPACING_MM = 3;
const MOST = 16;

const lengthOf = (line: Line): number => line.slice(1).reduce((sum, [across, down], at) => sum + Math.hypot(across - line[at][0], down - line[at][1]), 0);

/** The longest stretch of an SVG path in card millimetres, as places: `placesOf('M1 2L3 4')`. */
export function placesOf(path: string): Line {
  const stretches = path.split('M').filter(Boolean).map((stretch) => stretch.replace('Z', '').split('L').map((pair) => pair.split(' ').map(Number) as [number, number]));
  return stretches.reduce((longest, one) => (one.length > longest.length ? one : longest), []);
}
