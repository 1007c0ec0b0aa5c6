/** What a photo of known skin beside the card says about that skin, corrected by the card and not. */
import type { CardKnowledge } from '../../../lib/colour/card-knowledge';
import type { CodeTriple, PatchReading } from '../../../lib/colour/card-readings';
import { erythemaIndex } from '../../../lib/colour/erythema-index';
import { readCardColour } from '../../../lib/colour/read-card-colour';
import type { CardColour } from '../../../lib/colour/read-card-colour';
import { paperLightAt } from '../../../lib/colour/shading';
import { decodeSrgb } from '../../../lib/colour/decode-srgb';
import { logLightOf } from '../../../lib/colour/tone-curve';
import type { PointMm } from '../../../lib/units';
import { codesOf, paperOf, readingsOf } from '../../unit/colour/simulate-card-photo';
import type { Scene } from '../../unit/colour/simulate-card-photo';

/** Light to dark skin, plain and inflamed, as light relative to paper: our own choice, index 17 to 37. */
export const SKINS: readonly CodeTriple[] = [
  [0.62, 0.42, 0.33],
  [0.66, 0.38, 0.3],
  [0.45, 0.27, 0.2],
  [0.5, 0.22, 0.18],
  [0.25, 0.14, 0.1],
  [0.12, 0.065, 0.05],
  [0.14, 0.06, 0.05],
];

const TOE: PointMm = { acrossMm: 42.8, downMm: 30 };
const PIXELS = 40;

export interface Photo {
  readonly scene: Scene;
  readonly patches: readonly PatchReading[];
  readonly paper: ReturnType<typeof paperOf>;
  /** Mean code values of each skin over many noisy pixels. */
  readonly skinCodes: readonly CodeTriple[];
  readonly paperCode: CodeTriple;
}

/** Photographs the card and patches of every skin in the middle of the notch, or where asked. */
export function photograph(scene: Scene, random: () => number, skinAt: PointMm = TOE): Photo {
  const meanCodes = (light: CodeTriple, at: PointMm): CodeTriple => {
    const sums = [0, 0, 0];
    for (let pixel = 0; pixel < PIXELS; pixel += 1) {
      codesOf(scene, light, at, random).forEach((code, channel) => {
        sums[channel] += code / PIXELS;
      });
    }
    return [sums[0], sums[1], sums[2]];
  };
  const paper = paperOf(scene, random);
  const [red, green, blue] = [0, 1, 2].map(
    (channel) => paper.reduce((sum, spot) => sum + spot.code[channel], 0) / paper.length,
  );
  return {
    scene,
    patches: readingsOf(scene, random),
    paper,
    skinCodes: SKINS.map((skin) => meanCodes(skin, skinAt)),
    paperCode: [red, green, blue],
  };
}

export const trueIndices = (): number[] => SKINS.map(([red, green]) => erythemaIndex(red, green));

/** The standard curve and one white for the whole picture: what there is without tone curve and shading. */
export function plainIndices({ skinCodes, paperCode }: Photo): number[] {
  return skinCodes.map(([red, green]) =>
    erythemaIndex(decodeSrgb(red) / decodeSrgb(paperCode[0]), decodeSrgb(green) / decodeSrgb(paperCode[1])),
  );
}

export function readColour(photo: Photo, knowledge: CardKnowledge): CardColour {
  const read = readCardColour(photo.patches, photo.paper, knowledge);
  if ('unread' in read) throw new Error(`${read.unread}: ${read.usableSpots}`);
  return read;
}

export function correctedIndices({ skinCodes }: Photo, colour: CardColour, skinAt: PointMm = TOE): number[] {
  const paper = paperLightAt(colour.shading, skinAt);
  const light = (code: number) => Math.exp(logLightOf(colour.tone.curve, code) - logLightOf(colour.tone.curve, 255));
  return skinCodes.map(([red, green]) => erythemaIndex(light(red) / paper.red, light(green) / paper.green));
}

export const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(share * (values.length - 1))];
