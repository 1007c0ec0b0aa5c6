import { asRegion, outlineUMm } from './as-region';
import { HALF, LEAST_PLATE_MM2, LEAST_TOE_MM2, LEAST_WOUND_MM2, WOUND_WITHIN_MM } from './constants';
import { traceCutEdge } from './cut-edge';
import { findErythema } from './find-erythema';
import { findReference } from './find-reference';
import { traceNailFoldMargin, type TracedMargin } from './nail-fold-margin';
import { joinedToFold } from './joined-to-fold';
import { outlinesOf } from './outlines-of';
import { piecesNear } from './pieces-near';
import { rawTissue } from './raw-tissue';
import type { Segmentation, TissueFields, ToldSide } from './segmentation';
import type { ToeColours } from './toe-colours';
import { type Piece, tracePieces } from './trace-pieces';
import { leastVisibleStepEi } from './weigh-evidence';
import type { MapGrid } from '../rectify/millimetre-map';
import { ringMask } from '../rectify/ring-mask';

/**
 * Tissue fields and the map's colours → outlines in millimetres, each with how far it can be trusted, the reference
 * skin, and what the picture itself says about the redness.
 *
 * @param colours the corrected map
 * @param fields tissue fields on the same grid
 * @param told the treated side where it is on record or known from earlier visits
 * @returns outlines; null for what was not found. Nothing found is no finding of "nothing there"
 * @example segmentToe(colours, fields).erythema?.confidence
 */
export function segmentToe(colours: ToeColours, fields: TissueFields, told: ToldSide | null = null): Segmentation {
  const { grid } = fields;
  const [toePiece] = tracePieces(grid, fields.toe, HALF, LEAST_TOE_MM2);
  const [platePiece] = tracePieces(grid, fields.nailPlate, HALF, LEAST_PLATE_MM2);
  const [unitPiece] = tracePieces(grid, fields.nailUnit, HALF, LEAST_PLATE_MM2);
  const margin = unitPiece ? traceNailFoldMargin(fields, unitPiece.outer, told) : null;
  const cutEdge = margin && platePiece ? traceCutEdge(platePiece.outer, margin.lateral) : null;
  const raw = woundPieces(grid, fields.raw, margin);
  const macerated = woundPieces(grid, fields.macerated, margin);
  const reference = findReference(colours, fields);
  const excessEi = reference && difference(colours.erythemaIndex, reference.fieldEi);
  return {
    grid,
    toe: toePiece ? asRegion(grid, fields.toe, [toePiece]) : null,
    nailPlate: platePiece ? asRegion(grid, fields.nailPlate, [platePiece]) : null,
    treatedSide: margin?.side ?? null,
    nailFoldMargin: margin && {
      line: margin.line,
      confidence: margin.support,
      boundaryUMm: outlineUMm(grid, fields.nailUnit, unitPiece),
      origin: 'proposed',
    },
    marginLateral: margin?.lateral ?? null,
    cutEdge: cutEdge && { line: cutEdge, boundaryUMm: outlineUMm(grid, fields.nailPlate, platePiece) },
    raw: raw.length > 0 ? asRegion(grid, fields.raw, raw) : null,
    rawTissue: raw.length > 0 ? rawTissue(colours, ringMask(outlinesOf(raw), grid)) : null,
    macerated: macerated.length > 0 ? asRegion(grid, fields.macerated, macerated) : null,
    ...findErythema(colours, fields, joinedToFold(margin, [...raw, ...macerated]), reference, excessEi),
    reference,
    leastVisibleEi: reference && leastVisibleStepEi(reference),
    excessEi,
  };
}

function difference(plane: Float32Array, less: Float32Array): Float32Array {
  const result = new Float32Array(plane.length);
  for (let i = 0; i < plane.length; i++) result[i] = plane[i] - less[i];
  return result;
}

function woundPieces(grid: MapGrid, field: Float32Array, margin: TracedMargin | null): Piece[] {
  if (!margin) return [];
  return piecesNear(tracePieces(grid, field, HALF, LEAST_WOUND_MM2), [margin.line], WOUND_WITHIN_MM);
}
