import { median } from 'd3-array';
import { readFileSync } from 'node:fs';
import { OWN_CARD } from '../../../lib/card/own-card';
import { analysisPorts } from '../../../lib/edges/analysis-ports';
import { tissueModel } from '../../../lib/edges/infer/tissue-model';
import { analysePhoto } from '../../../lib/pipeline/analyse-photo';
import { regionAreaMm2 } from '../../../lib/measure/region-area';
import { LEAST_CONFIDENCE } from '../../../lib/segment/constants';
import { segmentToe } from '../../../lib/segment/segment-toe';
import type { Segmentation } from '../../../lib/segment/segmentation';
import { sharedFile } from '../../shared-data';
import { erythemaStep } from './erythema-step';
import { type AssumedPlace, mapWithoutCard, maskOnMap } from './map-without-card';
import type { OutsideSheet } from './outside-sheet';
import type { OutsideRow, OutsideTable } from './outside-table';
import { listedMasks, readMaskedPhoto } from './read-masked-photo';
import { DARKER, FOOT_PX_PER_MM, TOE_PLACES, TOE_WIDTH_MM } from './skin-places';

const WOUNDS = () => listedMasks().filter(({ image }) => image.startsWith('foot_ulcer/'));
const fileOf = (image: string): string => image.split('/')[2];
const toneOf = (file: string): string => (DARKER.includes(file) ? 'darker' : 'lighter');

/** Every skin and nail photo as a patient would send it: none has a card, so each has to be refused. */
export async function photosWithoutCard(): Promise<OutsideTable> {
  const ports = await analysisPorts();
  const rows: OutsideRow[] = [];
  for (const { image } of listedMasks()) {
    const result = await analysePhoto(new Uint8Array(readFileSync(sharedFile('skin', image))), { geometry: OWN_CARD, print: { scale: 1, relativeU: 0.005, confirmed: true }, context: { receivedAt: null, knownSha256: new Set() } }, ports);
    const gates = result.analysed ? result.analysis.reasons.map(({ gate }) => gate) : [result.refusal.id];
    rows.push({ name: image, verdict: result.analysed && result.analysis.measurement ? 'wrong' : 'refused', figure: null, note: gates.join(' ') });
  }
  return { kind: 'skin and nail photos as sent, whole chain', figure: '', worse: 'higher', assumed: null, rows, facts: {} };
}

/** Wounds of feet, far from any nail: not what the tool is for. It must not call them redness of a fold. */
export async function woundPhotos(sheet: OutsideSheet | null): Promise<OutsideTable> {
  const model = await tissueModel();
  const rows: OutsideRow[] = [];
  const steps: Record<string, number[]> = { lighter: [], darker: [] };
  for (const listing of WOUNDS()) {
    const { photo, mask, pieces: [largest] } = await readMaskedPhoto(listing);
    const place: AssumedPlace = { column: largest.column, row: largest.row, pxPerMm: FOOT_PX_PER_MM, tipDeg: 0 };
    const colours = mapWithoutCard(photo, place);
    const fields = await model.infer(colours);
    const found = segmentToe(colours, fields);
    const truth = maskOnMap(mask, photo.widthPx, place);
    const file = fileOf(listing.image);
    const step = erythemaStep(colours, truth);
    if (step) steps[toneOf(file)].push(step.stepEi);
    const redness = rednessOf(found);
    const asRaw = share(truth, fields.raw);
    rows.push({
      name: `${file} (${toneOf(file)})`,
      verdict: redness.called ? 'wrong' : found.raw ? 'found' : 'refused',
      figure: step && Number(step.stepEi.toFixed(1)),
      note: `redness: ${redness.words}; ${(100 * asRaw).toFixed(0)} % of the wound called raw; ITA around ${step ? `${step.itaDeg.toFixed(0)}°` : '–'}`,
    });
    await sheet?.add(`${file} wound`, colours, found, truth);
  }
  return {
    kind: 'wound photos with masks',
    figure: 'erythema index of the wound above the skin around it, EI',
    worse: 'lower',
    assumed: `no card: ${FOOT_PX_PER_MM} px/mm assumed, map laid with the wound where a nail would be, colours as the camera gave them`,
    rows,
    facts: { medianStepLighterEi: rounded(median(steps.lighter)), medianStepDarkerEi: rounded(median(steps.darker)), darker: steps.darker.length },
  };
}

/** Real big toes from above, none operated: is toe and plate found, and is nothing raw called where no mask says so? */
export async function toePhotos(sheet: OutsideSheet | null): Promise<OutsideTable> {
  const model = await tissueModel();
  const rows: OutsideRow[] = [];
  for (const { file, column, row, toeWidthPx, tipDeg } of TOE_PLACES) {
    const listing = WOUNDS().find(({ image }) => fileOf(image) === file);
    if (!listing) continue;
    const { photo, mask } = await readMaskedPhoto(listing);
    const place = { column, row, pxPerMm: toeWidthPx / TOE_WIDTH_MM, tipDeg };
    const colours = mapWithoutCard(photo, place);
    const found = segmentToe(colours, await model.infer(colours));
    const redness = rednessOf(found);
    const rawMm2 = found.raw ? regionAreaMm2(found.raw.rings) : 0;
    const [toe, plate] = [found.toe !== null, found.nailPlate !== null];
    rows.push({
      name: `${file} (${toneOf(file)})`,
      verdict: found.raw ? 'wrong' : toe && plate ? 'found' : 'refused',
      figure: Number(rawMm2.toFixed(1)),
      note: `${toe ? 'toe' : 'no toe'}, ${plate ? 'plate' : 'no plate'}; redness: ${redness.words}; ${place.pxPerMm.toFixed(1)} px/mm; ITA ${found.reference ? `${found.reference.ita.angleDeg.toFixed(0)}°` : '–'}`,
    });
    await sheet?.add(`${file} toe`, colours, found, maskOnMap(mask, photo.widthPx, place));
  }
  return {
    kind: 'real big toes in the foot photos',
    figure: 'raw area called where no mask has a wound, mm²',
    worse: 'higher',
    assumed: `no card: places by eye, toe ${TOE_WIDTH_MM} mm wide; two to three pixels a millimetre, which the resolution gate would refuse`,
    rows,
    facts: {},
  };
}

function rednessOf({ erythema, evidence }: Segmentation): { called: boolean; words: string } {
  if (!erythema) return { called: false, words: 'none found' };
  if (evidence?.verdict !== 'supported' || erythema.confidence < LEAST_CONFIDENCE) return { called: false, words: 'sent to a person' };
  return { called: true, words: 'called' };
}

const share = (truth: Uint8Array, field: Float32Array): number => {
  let [inside, called] = [0, 0];
  for (let i = 0; i < truth.length; i++) if (truth[i] === 1) [inside, called] = [inside + 1, called + (field[i] > 0.5 ? 1 : 0)];
  return inside === 0 ? 0 : called / inside;
};

const rounded = (value: number | undefined): number | null => (value === undefined ? null : Number(value.toFixed(2)));
