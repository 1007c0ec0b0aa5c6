import type { Region } from '../segment/segmentation';
import type { LineMm } from '../units';
import type { Outlines } from './measure-input';
import { CARD_DOWN } from './toe-frame';
import { fitToeCylinder } from './toe-cylinder';
import { type LensPlace, straightenPoint, type ToeRelief } from './toe-relief';

/**
 * Outlines as they lie under an orthogonal view, from outlines as a leaning camera shows them.
 *
 * @param outlines as found in the map
 * @param lens where the lens stood
 * @returns moved outlines; unchanged where the toe's own outline is missing, for then its body is unknown
 * @example straightenOutlines(outlines, { acrossMm: 42, downMm: 30, heightMm: 250 }).erythema
 */
export function straightenOutlines(outlines: Outlines, lens: LensPlace): Outlines {
  const cylinder = fitToeCylinder(outlines.toe?.rings ?? [], CARD_DOWN);
  return cylinder === null ? outlines : straightenWith({ cylinder, lens }, outlines);
}

/**
 * The same over a body that is known already.
 *
 * @param relief the toe's body and the lens
 * @param outlines as found in the map
 * @example straightenWith(relief, outlines).erythema
 */
export function straightenWith(relief: ToeRelief, outlines: Outlines): Outlines {
  const line = (points: LineMm): LineMm => points.map((point) => straightenPoint(relief, point));
  const region = (one: Region | null): Region | null => one && { ...one, rings: one.rings.map(({ ring, hole }) => ({ ring: line(ring), hole })) };
  const { nailFoldMargin: margin, cutEdge } = outlines;
  return {
    erythema: region(outlines.erythema),
    raw: region(outlines.raw),
    macerated: region(outlines.macerated),
    nailPlate: region(outlines.nailPlate),
    toe: outlines.toe,
    nailFoldMargin: margin && { ...margin, line: line(margin.line) },
    marginLateral: outlines.marginLateral && line(outlines.marginLateral),
    cutEdge: cutEdge && { ...cutEdge, line: line(cutEdge.line) },
  };
}
