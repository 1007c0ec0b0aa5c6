import type { LinearTables } from '../rectify/resample-map';
import type { DeltaE } from '../units';
import { deltaE } from '../units';
import { expectedLightOf } from './card-knowledge';
import type { CardColourKind, CardKnowledge } from './card-knowledge';
import type { PatchReading, WhiteSample } from './card-readings';
import {
  CLIPPED_FROM_CODE,
  LEAST_PAPER_SPOTS,
  MAX_CODE,
  PAPER_BEND_CODE_SD,
  PAPER_CODE_SIGMA,
  PATCH_CLIPPED_SHARE,
} from './constants';
import { convertLinearToLab65 } from './convert-linear-to-lab65';
import { differenceCiede2000 } from './difference-ciede2000';
import type { LinearRgb } from './encodings';
import { fitToneCurve } from './fit-tone-curve';
import type { FittedToneCurve, GreyPair } from './fit-tone-curve';
import { medianOf } from '../rectify/median-of';
import { sortPaperSpots } from './paper-spots';
import { fieldAt, fitQuadraticField } from './quadratic-field';
import { readPatchLight } from './read-patch-light';
import type { PatchLight } from './read-patch-light';
import { scaleLight } from './scale-light';
import { fitShading } from './shading';
import type { Shading } from './shading';
import { toneTables } from './tone-curve';

/** All that one photo's card says about light and colour. */
export interface CardColour {
  readonly kind: CardColourKind;
  readonly tone: FittedToneCurve;
  /** Code value to linear light, for resampling the photo. */
  readonly tables: LinearTables;
  readonly shading: Shading;
  /** Light of every usable patch relative to bare paper. */
  readonly patches: readonly PatchLight[];
  /** Light of bare paper relative to a perfect diffuser: nominal for a home card. */
  readonly paperLight: LinearRgb;
  /** Median ΔE00 of the corrected grey patches against what is known or nominal; null without usable greys. */
  readonly residualDeltaE: DeltaE | null;
}

/** Why a card's colour cannot be read: too little bare paper, unclipped, in view. */
export interface CardColourUnread {
  readonly unread: 'tooFewPaperSpots';
  readonly usableSpots: number;
  readonly neededSpots: number;
}

/**
 * Reads tone curve, light and white balance of one photo from its card.
 * @param patches code values of the card's patches; clipped and dirty ones may be among them
 * @param spots code values of small spots of bare paper all over the card; some may show ink or a finger
 * @param knowledge what is known of this print
 * @returns the card's colour, or why it cannot be read
 * @example readCardColour([], [], HOME_CARD) // { unread: 'tooFewPaperSpots', usableSpots: 0, neededSpots: 12 }
 */
export function readCardColour(
  patches: readonly PatchReading[],
  spots: readonly WhiteSample[],
  knowledge: CardKnowledge,
): CardColour | CardColourUnread {
  const { usable } = sortPaperSpots(spots);
  if (usable.length < LEAST_PAPER_SPOTS) {
    return { unread: 'tooFewPaperSpots', usableSpots: usable.length, neededSpots: LEAST_PAPER_SPOTS };
  }
  const clean = patches.filter(({ clippedShare }) => clippedShare <= PATCH_CLIPPED_SHARE);
  const tone = fitToneCurve(greyPairs(clean, usable, knowledge), knowledge.patches.size > 0);
  const tables = toneTables(tone.curve);
  const shading = fitShading(usable, tables);
  const lights = clean.flatMap((reading) => readPatchLight(reading, tone.curve, shading) ?? []);
  return {
    kind: knowledge.kind,
    tone,
    tables,
    shading,
    patches: lights,
    paperLight: knowledge.paperLight,
    residualDeltaE: greyResidual(lights, knowledge),
  };
}

/** Every unclipped grey reading beside the code value that bare paper has at its place. */
function greyPairs(
  patches: readonly PatchReading[],
  spots: readonly WhiteSample[],
  knowledge: CardKnowledge,
): GreyPair[] {
  const greys = patches.filter(({ patch }) => patch.kind === 'grey');
  return [0, 1, 2].flatMap((channel) => {
    const samples = spots.map((spot) => ({ at: spot, value: spot.code[channel] }));
    const { field } = fitQuadraticField(samples, PAPER_CODE_SIGMA, PAPER_BEND_CODE_SD);
    return greys.flatMap(({ patch, codeMedian }): GreyPair[] => {
      const expected = expectedLightOf(patch, knowledge);
      const expectedLight = [expected.red, expected.green, expected.blue][channel];
      const pair = { name: patch.name, code: codeMedian[channel], whiteCode: fieldAt(field, patch.centre), expectedLight };
      return pair.code < CLIPPED_FROM_CODE && pair.whiteCode < MAX_CODE && expectedLight > 0 ? [pair] : [];
    });
  });
}

function greyResidual(lights: readonly PatchLight[], knowledge: CardKnowledge): DeltaE | null {
  const differences = lights
    .filter(({ patch }) => patch.kind !== 'colour')
    .map(({ patch, light }) => {
      const read = convertLinearToLab65(scaleLight(light, knowledge.paperLight));
      const expected = convertLinearToLab65(scaleLight(expectedLightOf(patch, knowledge), knowledge.paperLight));
      return differenceCiede2000(read, expected);
    });
  return differences.length > 0 ? deltaE(medianOf(differences)) : null;
}
