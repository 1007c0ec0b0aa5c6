import { asRegion } from './as-region';
import { ERYTHEMA_LEVEL, HALF, LEAST_ERYTHEMA_MM2, LEAST_LIGHT } from './constants';
import { outlineLevel } from './outline-level';
import { outlinesOf } from './outlines-of';
import type { ReferenceSkin, Segmentation, TissueFields } from './segmentation';
import type { ToeColours } from './toe-colours';
import { type Piece, tracePieces } from './trace-pieces';
import { weighEvidence } from './weigh-evidence';
import { ringMask } from '../rectify/ring-mask';

/**
 * Redness that is joined to the fold: found by the model, weighed against the picture, and outlined where both say.
 *
 * @param colours the map
 * @param fields tissue fields
 * @param isJoined does a piece belong to the treated fold (`joinedToFold`)?
 * @param reference plain skin; null where there is none
 * @param excessEi index above the reference field
 * @returns the region with the model's own confidence in what it found; nulls where nothing was found or nothing can be compared
 * @example findErythema(colours, fields, joinedToFold(margin, wounds), reference, excessEi).erythema?.confidence // 0.8
 */
export function findErythema(
  colours: ToeColours,
  fields: TissueFields,
  isJoined: (piece: Piece) => boolean,
  reference: ReferenceSkin | null,
  excessEi: Float32Array | null,
): Pick<Segmentation, 'erythema' | 'evidence'> {
  const { grid, erythema } = fields;
  const joined = (level: number) => tracePieces(grid, erythema, level, LEAST_ERYTHEMA_MM2).filter(isJoined);
  const proposed = joined(ERYTHEMA_LEVEL);
  if (proposed.length === 0) return { erythema: null, evidence: null };
  const region = asRegion(grid, erythema, proposed);
  if (!reference || !excessEi) return { erythema: region, evidence: null };
  const inside = ringMask(outlinesOf(proposed), grid);
  const skin = comparableSkin(colours, fields);
  const evidence = weighEvidence(grid, inside, skin, excessEi, reference);
  const outlined = joined(outlineLevel(grid, erythema, inside, skin, excessEi));
  return { erythema: outlined.length > 0 ? { ...asRegion(grid, erythema, outlined), confidence: region.confidence } : region, evidence };
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
