import type { Outlines } from '../measure/measure-input';
import { resampleLine } from '../measure/resample-line';
import { traceCutEdge } from '../segment/cut-edge';
import { MARGIN_STEP_MM } from '../segment/constants';
import { lateralPart } from '../segment/nail-fold-margin';
import type { MarginLine } from '../segment/segmentation';
import type { LineMm } from '../units';

/**
 * The margin with what hangs on it: its side, and the plate's edge that faces it.
 *
 * @param found the other outlines, as the camera shows them
 * @param line the margin, from either end, as the camera shows it, mm
 * @param facts where it comes from and how far it may be trusted
 * @returns null for the cut edge where no plate was found
 * @example marginParts(found, line, { boundaryUMm: 0.25, confidence: 1, origin: 'confirmed' }).nailFoldMargin?.origin // 'confirmed'
 */
export function marginParts(found: Outlines, line: LineMm, facts: Omit<MarginLine, 'line'>): Pick<Outlines, 'nailFoldMargin' | 'marginLateral' | 'cutEdge'> {
  // The toe points up the card: the end that lies higher is the distal one.
  const fromTip = resampleLine(line[0].downMm <= line[line.length - 1].downMm ? line : [...line].reverse(), MARGIN_STEP_MM);
  const marginLateral = lateralPart(fromTip);
  const plate = found.nailPlate?.rings.find(({ hole }) => !hole)?.ring;
  const edge = plate ? traceCutEdge(plate, marginLateral) : null;
  return {
    nailFoldMargin: { ...facts, line: fromTip },
    marginLateral,
    cutEdge: edge && found.nailPlate && { line: edge, boundaryUMm: found.nailPlate.boundaryUMm },
  };
}
