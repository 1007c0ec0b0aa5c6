import { mean, median } from 'd3-array';
import { RESOLUTION_LIMIT_PX_PER_MM } from '../../../lib/rectify/constants';
import { tissueModel, type TissueModel } from '../../../lib/edges/infer/tissue-model';
import { ringMask } from '../../../lib/rectify/ring-mask';
import { segmentToe } from '../../../lib/segment/segment-toe';
import type { Segmentation } from '../../../lib/segment/segmentation';
import type { ToeColours } from '../../../lib/segment/toe-colours';
import { type AssumedPlace, mapWithoutCard, maskOnMap } from './map-without-card';
import type { OutsideSheet } from './outside-sheet';
import type { OutsideRow, OutsideTable } from './outside-table';
import { listedMasks, type MaskPiece, readMaskedPhoto } from './read-masked-photo';

/** A big toe's plate covers about this much as seen from above (common practice: 12–13 mm each way). */
export const PLATE_MM2 = 150;
const DIRECTIONS_DEG = [0, 45, 90, 135, 180, 225, 270, 315];
const LEAST_DICE = 0.5;

export interface NailTry {
  readonly place: AssumedPlace;
  readonly colours: ToeColours;
  readonly found: Segmentation;
  readonly surety: number;
}

/** Finger nails with published masks: the shape of the plate, where a card would have told place and scale. */
export async function nailPhotos(sheet: OutsideSheet | null): Promise<OutsideTable> {
  const model = await tissueModel();
  const rows: OutsideRow[] = [];
  const [fine, all]: [number[], number[]] = [[], []];
  for (const listing of listedNails()) {
    const { photo, pieces } = await readMaskedPhoto(listing);
    for (const [index, piece] of pieces.entries()) {
      const best = await surestNail(model, photo, piece);
      const dice = diceOfNail(best, piece, photo.widthPx);
      const name = `${listing.image.split('/')[2].slice(0, 8)} nail ${index + 1}`;
      const note = `${best.place.pxPerMm.toFixed(1)} px/mm, tip ${best.place.tipDeg}°`;
      rows.push({ name, verdict: dice === null ? 'refused' : dice >= LEAST_DICE ? 'found' : 'wrong', figure: dice === null ? null : Number(dice.toFixed(3)), note });
      all.push(dice ?? 0);
      if (best.place.pxPerMm >= RESOLUTION_LIMIT_PX_PER_MM) fine.push(dice ?? 0);
      await sheet?.add(`${name} ${dice?.toFixed(2) ?? 'refused'}`, best.colours, best.found, maskOnMap(piece.mask, photo.widthPx, best.place));
    }
  }
  return {
    kind: 'nail photos with masks',
    figure: 'Dice of the nail plate',
    worse: 'lower',
    assumed: `no card: place and scale taken from the mask (plate = ${PLATE_MM2} mm²), direction the one of eight of which the model is surest, colours as the camera gave them`,
    rows,
    facts: {
      medianDice: rounded(median(all)),
      meanDice: rounded(mean(all)),
      finerThanGate: fine.length,
      medianDiceFinerThanGate: rounded(median(fine)),
      meanDiceFinerThanGate: rounded(mean(fine)),
    },
  };
}

export const listedNails = () => listedMasks().filter(({ image }) => image.startsWith('fingernail/'));

/** Overlap of the plate with its mask; null where none was found. */
export function diceOfNail({ found, place }: NailTry, piece: MaskPiece, widthPx: number): number | null {
  if (!found.nailPlate) return null;
  return diceOf(ringMask(found.nailPlate.rings.map(({ ring }) => ring), found.grid), maskOnMap(piece.mask, widthPx, place));
}

/** The direction in which the model is surest of plate and toe; the mask has no say in it. */
export async function surestNail(model: TissueModel, photo: Parameters<typeof mapWithoutCard>[0], piece: MaskPiece): Promise<NailTry> {
  let best: NailTry | null = null;
  for (const tipDeg of DIRECTIONS_DEG) {
    const place = { column: piece.column, row: piece.row, pxPerMm: Math.sqrt(piece.areaPx / PLATE_MM2), tipDeg };
    const colours = mapWithoutCard(photo, place);
    const fields = await model.infer(colours);
    const found = segmentToe(colours, fields);
    const surety = found.nailPlate && found.toe ? found.nailPlate.confidence * found.toe.confidence : 0;
    if (!best || surety > best.surety) best = { place, colours, found, surety };
  }
  return best as NailTry;
}

/** Overlap of two masks: twice what they share over what they have. */
function diceOf(one: Uint8Array, other: Uint8Array): number {
  let [both, either] = [0, 0];
  for (let i = 0; i < one.length; i++) {
    both += one[i] & other[i];
    either += one[i] + other[i];
  }
  return either === 0 ? 0 : (2 * both) / either;
}

const rounded = (value: number | undefined): number | null => (value === undefined ? null : Number(value.toFixed(3)));
