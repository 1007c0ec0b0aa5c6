import {
  ERYTHEMA_LEVEL,
  HALF,
  JOINED_WITHIN_MM,
  LEAST_BOUNDARY_U_MM,
  LEAST_ERYTHEMA_MM2,
  LEAST_LIGHT,
  LEAST_PLATE_MM2,
  LEAST_TOE_MM2,
  LEAST_WOUND_MM2,
  OUTLINE_HIGH,
  OUTLINE_LOW,
  WOUND_WITHIN_MM,
} from './constants';
import { traceCutEdge } from './cut-edge';
import { outlinesOf } from './outlines-of';
import { findReference } from './find-reference';
import { traceNailFoldMargin, type TracedMargin } from './nail-fold-margin';
import { rawTissue } from './raw-tissue';
import type { Region, Segmentation, TissueFields, TreatedSide } from './segmentation';
import type { ToeColours } from './toe-colours';
import { toRegion } from './to-region';
import { type Piece, tracePieces } from './trace-pieces';
import { leastVisibleStepEi, weighEvidence } from './weigh-evidence';
import type { LineMm } from '../units';
import type { MapGrid } from '../rectify/millimetre-map';
import { ringMask } from '../rectify/ring-mask';
import { comesWithin } from './comes-within';

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
export function segmentToe(colours: ToeColours, fields: TissueFields, told: TreatedSide | null = null): Segmentation {
  const { grid } = fields;
  const [toePiece] = tracePieces(grid, fields.toe, HALF, LEAST_TOE_MM2);
  const [platePiece] = tracePieces(grid, fields.nailPlate, HALF, LEAST_PLATE_MM2);
  const [unitPiece] = tracePieces(grid, fields.nailUnit, HALF, LEAST_PLATE_MM2);
  const margin = unitPiece ? traceNailFoldMargin(fields, unitPiece.outer, told) : null;
  const cutEdge = margin && platePiece ? traceCutEdge(platePiece.outer, margin.lateral) : null;
  const raw = woundPieces(grid, fields.raw, margin);
  const macerated = woundPieces(grid, fields.macerated, margin);
  const erythema = margin ? joinedPieces(grid, fields.erythema, [margin.line, ...[...raw, ...macerated].map((piece) => piece.outer)]) : [];
  const reference = findReference(colours, fields);
  const excessEi = reference && difference(colours.erythemaIndex, reference.fieldEi);
  const evidence =
    reference && excessEi && erythema.length > 0
      ? weighEvidence(grid, ringMask(outlinesOf(erythema), grid), comparableSkin(colours, fields), excessEi, reference)
      : null;
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
    erythema: erythema.length > 0 ? asRegion(grid, fields.erythema, erythema) : null,
    evidence,
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

/** Skin whose index may be compared: toe, lit and seen, without nail, groove, wound and soggy skin. */
function comparableSkin(colours: ToeColours, fields: TissueFields): Uint8Array {
  const skin = new Uint8Array(fields.toe.length);
  for (let i = 0; i < skin.length; i++) {
    const other = Math.max(fields.nailUnit[i], fields.nailPlate[i], fields.groove[i], fields.raw[i], fields.macerated[i]);
    skin[i] = fields.toe[i] >= HALF && other < HALF && colours.seen[i] === 1 && colours.green[i] > LEAST_LIGHT ? 1 : 0;
  }
  return skin;
}

function woundPieces(grid: MapGrid, field: Float32Array, margin: TracedMargin | null): Piece[] {
  if (!margin) return [];
  return near(tracePieces(grid, field, HALF, LEAST_WOUND_MM2), [margin.line], WOUND_WITHIN_MM);
}

function joinedPieces(grid: MapGrid, field: Float32Array, lines: readonly LineMm[]): Piece[] {
  return near(tracePieces(grid, field, ERYTHEMA_LEVEL, LEAST_ERYTHEMA_MM2), lines, JOINED_WITHIN_MM);
}

/** Pieces that come within a distance of some lines. */
function near(pieces: readonly Piece[], lines: readonly LineMm[], withinMm: number): Piece[] {
  return pieces.filter((piece) => lines.some((line) => comesWithin(piece.outer, line, withinMm)));
}

function asRegion(grid: MapGrid, field: Float32Array, pieces: readonly Piece[]): Region {
  const inside = ringMask(outlinesOf(pieces), grid);
  let sum = 0;
  let n = 0;
  for (let i = 0; i < inside.length; i++) {
    if (inside[i] === 0) continue;
    sum += field[i];
    n++;
  }
  return toRegion(pieces, n > 0 ? sum / n : 0, outlineUMm(grid, field, pieces[0]));
}

/** The band between the outlines at 69 % and at 31 %, over its length, halved: one standard deviation of where the edge may be. */
function outlineUMm(grid: MapGrid, field: Float32Array, piece: Piece): number {
  let between = 0;
  for (let i = 0; i < field.length; i++) if (field[i] > OUTLINE_LOW && field[i] < OUTLINE_HIGH) between++;
  return Math.max(LEAST_BOUNDARY_U_MM, between / grid.pxPerMm ** 2 / 2 / perimeterMm(piece.outer));
}

function perimeterMm(ring: LineMm): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length];
    return sum + Math.hypot(q.acrossMm - p.acrossMm, q.downMm - p.downMm);
  }, 0);
}
