import type { PrintScale } from '../card/print-check';
import type { CardColour } from '../colour/read-card-colour';
import type { DecodeRefusal } from '../photo/decode-refusals';
import type { GateReason } from '../photo/reasons';
import type { UprightPhoto } from '../photo/upright-photo';
import type { CardFit } from '../rectify/fit-card';
import type { NotchFrame } from '../rectify/notch-frame';
import type { CardPose } from '../rectify/pose';
import type { Segmentation, TissueFields } from '../segment/segmentation';
import type { ToeColours } from '../segment/toe-colours';
import type { SegmentationMeasurement } from './measure-segmentation';

/** The card as one photo shows it. */
export interface SeenCard {
  readonly version: string;
  /** Where the toe lies on the card as printed. */
  readonly frame: NotchFrame;
  readonly serial: string | null;
  readonly fit: CardFit;
  readonly pose: CardPose;
  readonly pxPerMm: number;
  readonly edgeSpreadMm: number | null;
  readonly print: PrintScale;
}

/** Everything that was found out about one photo. A photo that could not be measured keeps what was seen before that. */
export interface Analysis {
  readonly photo: UprightPhoto;
  readonly methodVersion: string;
  /** Why nothing was measured; empty when the photo was measured. */
  readonly reasons: readonly GateReason[];
  readonly card: SeenCard | null;
  readonly colour: CardColour | null;
  /** Were its colours brought to those that the same card had in an earlier photo? */
  readonly matchedToBaseline: boolean;
  readonly colours: ToeColours | null;
  readonly fields: TissueFields | null;
  readonly segmentation: Segmentation | null;
  readonly measurement: SegmentationMeasurement | null;
}

/** A file that is no photo is not analysed at all. */
export type AnalysisResult = { readonly analysed: true; readonly analysis: Analysis } | { readonly analysed: false; readonly refusal: DecodeRefusal };

/**
 * Was it measured? Single numbers may still be missing, each with its own reason.
 * @example isMeasuredAnalysis({ ...analysis, measurement: null }) // false
 */
export const isMeasuredAnalysis = (analysis: Analysis): boolean => analysis.measurement !== null && analysis.reasons.length === 0;
