import { carryMargin, type UncertainLine } from '../measure/carry-margin';
import { largestRing } from '../measure/largest-ring';
import { leanPoint } from '../measure/lean-point';
import { measureToe } from '../measure/measure-toe';
import { movePoint, registerToes } from '../measure/register-toes';
import { fitToeCylinder } from '../measure/toe-cylinder';
import { CARD_DOWN } from '../measure/toe-frame';
import type { LineMm } from '../units';
import type { EarlierVisit } from './earlier-visit';
import { marginParts } from './margin-parts';
import type { SegmentationMeasurement } from './measure-segmentation';

/** Plates that do not lie upon each other better than this are not the same plate, or not the same side of it. Ours. */
const MOST_RESIDUAL_MM = 0.6;
/** What a proposed margin leaves over beyond its own field's width, and what laying two plates upon each other does. Own phantoms. */
const PROPOSAL_U_MM = 0.35;
const REGISTRATION_U_MM = 0.2;

/**
 * Measures again with a margin in which earlier visits have their say: the plates are laid upon each other, the earlier margins
 * moved along, and all of them brought together.
 *
 * @param measurement this photo alone
 * @param earlier earlier visits of the same toe
 * @returns the measurement with its margin carried over; as it was where nothing could be carried
 * @example carryOver(measurement, []) // measurement
 */
export function carryOver(measurement: SegmentationMeasurement, earlier: readonly EarlierVisit[]): SegmentationMeasurement {
  const { outlines, input } = measurement;
  const plate = largestRing(outlines.nailPlate?.rings ?? []);
  const margin = outlines.nailFoldMargin;
  if (plate === null || margin === null || earlier.length === 0) return measurement;
  const carried = earlier.flatMap((visit): UncertainLine[] => {
    const move = registerToes(visit.nailPlate, plate);
    if (move === null || move.residualMm > MOST_RESIDUAL_MM) return [];
    return [{ line: visit.nailFoldMargin.map((point) => movePoint(move, point)), uMm: Math.hypot(visit.marginUMm, REGISTRATION_U_MM) }];
  });
  if (carried.length === 0) return measurement;
  const together = carryMargin({ line: margin.line, uMm: Math.hypot(margin.boundaryUMm, PROPOSAL_U_MM) }, carried);
  const facts = { boundaryUMm: Math.min(margin.boundaryUMm, together.uMm), confidence: margin.confidence, origin: 'carriedOver' } as const;
  const again = { ...input, outlines: { ...input.outlines, ...marginParts(input.outlines, asSeen(together.line, measurement), facts) } };
  return { ...measureToe(again), input: again };
}

/** The line where this photo's camera shows it. */
function asSeen(line: LineMm, { input }: SegmentationMeasurement): LineMm {
  const cylinder = fitToeCylinder(input.outlines.toe?.rings ?? [], CARD_DOWN);
  const { lens } = input;
  return lens && cylinder ? line.map((point) => leanPoint({ cylinder, lens }, point)) : line;
}
