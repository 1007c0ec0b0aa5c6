import { type IndividualTypologyAngle, individualTypologyAngle } from '../colour/individual-typology-angle';
import { medianOf } from '../rectify/median-of';
import { convertLinearToLab65 } from '../colour/convert-linear-to-lab65';
import type { MapGrid } from '../rectify/millimetre-map';
import { HALF, LEAST_LIGHT, LEAST_REFERENCE_MM2, NOISE_SCALE_MM, OUTLINE_CLEAR_MM, REFERENCE_CLEAR_MM, SUSPECTED_REDNESS } from './constants';
import { distanceField } from './distance-field';
import { fitReferenceField } from './reference-field';
import type { ReferenceSkin, TissueFields } from './segmentation';
import { smoothMasked } from './smooth-masked';
import type { ToeColours } from './toe-colours';
import { toRegion } from './to-region';
import { tracePieces } from './trace-pieces';

/** Outlines of the reference skin are drawn for people to see; coarse is enough. */
const REFERENCE_BOUNDARY_U_MM = 0.5;

/**
 * Chooses plain skin of this toe in this photo, away from nail, wound, suspected redness and the toe's own outline, and
 * fits the index field to it.
 *
 * @param colours the map's colours
 * @param fields tissue fields
 * @returns the reference, or null with less than 40 mm² of plain skin or where that is no skin colour
 * @example findReference(colours, fields)?.ita.angleDeg // 34.2
 */
export function findReference(colours: ToeColours, fields: TissueFields): ReferenceSkin | null {
  const { grid } = fields;
  const plain = plainSkin(colours, fields);
  const areaMm2 = countOf(plain) / grid.pxPerMm ** 2;
  if (areaMm2 < LEAST_REFERENCE_MM2) return null;
  const smooth = smoothMasked(grid, colours.erythemaIndex, plain, NOISE_SCALE_MM);
  const fitted = fitReferenceField(grid, smooth, plain);
  const ita = medianIta(colours, plain);
  if (!fitted || ita === null) return null;
  return {
    region: toRegion(tracePieces(grid, plain, HALF, 1), 1, REFERENCE_BOUNDARY_U_MM),
    plain,
    ita,
    fieldEi: fitted.field,
    noiseEi: fitted.scatter,
    fieldUEi: fitted.scatter / Math.sqrt(Math.max(1, areaMm2 / 25)),
  };
}

function countOf(mask: Uint8Array): number {
  let count = 0;
  for (let i = 0; i < mask.length; i++) count += mask[i];
  return count;
}

function plainSkin(colours: ToeColours, fields: TissueFields): Uint8Array {
  const { grid, toe, nailUnit, nailPlate, groove, raw, macerated, erythema } = fields;
  const outside = new Uint8Array(toe.length);
  const marked = new Uint8Array(toe.length);
  for (let i = 0; i < outside.length; i++) {
    outside[i] = toe[i] < HALF ? 1 : 0;
    const nail = nailUnit[i] > SUSPECTED_REDNESS || nailPlate[i] > SUSPECTED_REDNESS || groove[i] > SUSPECTED_REDNESS;
    marked[i] = nail || raw[i] > SUSPECTED_REDNESS || macerated[i] > SUSPECTED_REDNESS || erythema[i] > SUSPECTED_REDNESS ? 1 : 0;
  }
  const toOutside = distanceField(grid, outside, OUTLINE_CLEAR_MM);
  const toMarked = distanceField(grid, marked, REFERENCE_CLEAR_MM);
  const plain = new Uint8Array(outside.length);
  for (let i = 0; i < plain.length; i++) {
    const lit = colours.seen[i] === 1 && colours.green[i] > LEAST_LIGHT;
    plain[i] = lit && toOutside[i] > OUTLINE_CLEAR_MM && toMarked[i] > REFERENCE_CLEAR_MM ? 1 : 0;
  }
  return plain;
}

/** ITA of the channel-wise median colour; medians are not moved by hair, wrinkles and gloss. */
function medianIta(colours: ToeColours, plain: Uint8Array): IndividualTypologyAngle | null {
  const at = everySome(plain, colours.grid);
  const channel = (plane: Float32Array) => medianOf(Float64Array.from(at, (i) => plane[i]));
  const lab65 = convertLinearToLab65({ red: channel(colours.red), green: channel(colours.green), blue: channel(colours.blue) });
  return individualTypologyAngle(lab65);
}

function everySome(plain: Uint8Array, grid: MapGrid): number[] {
  const step = Math.max(1, Math.round(grid.pxPerMm / 3));
  const at: number[] = [];
  for (let i = 0; i < plain.length; i += step) if (plain[i]) at.push(i);
  return at;
}
