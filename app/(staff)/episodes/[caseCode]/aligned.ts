import { layOver, toeToToe } from '../../../../lib/server/lay-over';
import type { ShownPhoto, ShownVersion } from '../../../../lib/server/shown-episode';
import type { DrawnLines } from '../../../_components/photo-with-lines';
import { drawnOn } from './drawn-on';

type Matrix = NonNullable<ShownPhoto['cardFromView']>;

/** The first map after the second: `product(a, b)` leads where b and then a lead. */
function product(a: Matrix, b: Matrix): Matrix {
  return Array.from({ length: 9 }, (_, i) => [0, 1, 2].reduce((sum, k) => sum + a[3 * Math.floor(i / 3) + k] * b[3 * k + (i % 3)], 0)) as unknown as Matrix;
}

/** How the toe of one photo is moved onto that of another; null where either does not say where its toe lies. */
function moveOf({ stand }: ShownPhoto, onto: ShownPhoto): Matrix | null {
  return stand.place && onto.stand.place ? toeToToe(stand.place, onto.stand.place) : null;
}

/** A photo turned and shifted so that its toe lies as on another: nail upon nail, axis upon axis. */
export function movedOnto(photo: ShownPhoto, onto: ShownPhoto): ShownPhoto {
  const move = moveOf(photo, onto);
  if (move === null || photo.cardFromView === null) return photo;
  return { ...photo, cardFromView: product(move, photo.cardFromView), versions: photo.versions.map((version) => ({ ...version, places: movedPlaces(version.places, move) })) };
}

/** Its lines as its own camera shows them, moved along with it. */
export function linesMovedOnto(photo: ShownPhoto, onto: ShownPhoto, number: number): DrawnLines {
  const move = moveOf(photo, onto);
  const drawn = drawnOn(photo, number);
  return move === null || photo === onto ? drawn : { ...drawn, matrix: [move[0], move[3], move[1], move[4], move[2], move[5]].join(' ') };
}

/** Its lines as the camera of the other photo would show them. */
export function linesLaidOn(photo: ShownPhoto, onto: ShownPhoto, number: number): DrawnLines {
  const { flat } = photo.versions.find((version) => version.number === number) ?? photo.versions[0];
  return { id: photo.id, date: photo.date, ...layOver(flat, photo.stand, onto.stand) };
}

function movedPlaces({ toe, dateAt }: ShownVersion['places'], move: Matrix): ShownVersion['places'] {
  const moved = ([across, down]: readonly [number, number]) => [move[0] * across + move[1] * down + move[2], move[3] * across + move[4] * down + move[5]] as const;
  if (toe === null) return { toe, dateAt: dateAt && moved(dateAt) };
  const corners = [toe.from, [toe.to[0], toe.from[1]], [toe.from[0], toe.to[1]], toe.to].map((one) => moved(one as readonly [number, number]));
  const [acrosses, downs] = [corners.map(([across]) => across), corners.map(([, down]) => down)];
  return { toe: { from: [Math.min(...acrosses), Math.min(...downs)], to: [Math.max(...acrosses), Math.max(...downs)] }, dateAt: dateAt && moved(dateAt) };
}
