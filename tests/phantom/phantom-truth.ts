/**
 * The exact answer to one photo. Every outline and length is the orthogonal projection onto the card's plane, true
 * millimetres in the card's frame as [across, down]; pixels are [column, row] of the upright picture.
 */
import type { FaultKind, Side } from './phantom-spec';
import type { SkinClass } from './skin/skin-class';

export type PairMm = readonly [number, number];
export type LineOfPairs = readonly PairMm[];
export interface TruthRing {
  readonly ring: LineOfPairs;
  readonly hole: boolean;
}

export interface TruthMeasurements {
  /** Skin with at least half of the plateau's added blood, outside nail, groove, raw and macerated surface and card. */
  readonly erythemaArea: number;
  /** The same at other shares of the plateau, by share. Where it leaps from 0.45 to 0.55 the area is moot. */
  readonly erythemaAreaAtLevels: Readonly<Record<string, number>>;
  readonly reach: number | null;
  readonly reachP95: number | null;
  readonly proximalReach: number | null;
  /** On the skin: what is seen from straight above of the region, and its greatest distance from the margin along the skin. */
  readonly unrolledArea: number;
  readonly unrolledReach: number | null;
  readonly grooveWidth: number;
  readonly grooveWidthMax: number;
  readonly rawArea: number;
  readonly maceratedArea: number;
}

export interface TruthOutlines {
  readonly toe: readonly TruthRing[];
  readonly nailPlate: readonly TruthRing[];
  readonly nailFoldMargin: LineOfPairs;
  /** The side alone, from the distal end of the fold to where the corner begins. */
  readonly nailFoldMarginLateral: LineOfPairs;
  readonly nailFoldMarginUntreated: LineOfPairs;
  readonly cutEdge: LineOfPairs;
  readonly erythema: readonly TruthRing[];
  /** Redness that does not come within 1 mm of the treated margin; not counted. */
  readonly erythemaSatellites: readonly TruthRing[];
  readonly groove: readonly TruthRing[];
  readonly raw: readonly TruthRing[];
  readonly macerated: readonly TruthRing[];
  /** Flat test targets: the printed shapes and their exact areas, mm². */
  readonly shapes: readonly { readonly ring: LineOfPairs; readonly areaMm2: number }[];
}

export interface PhantomTruth {
  readonly rendererVersion: string;
  readonly seed: number;
  readonly skinClass: SkinClass;
  readonly light: string;
  readonly faults: readonly FaultKind[];
  /** The one gate that has to refuse the photo, or null. */
  readonly expectedGate: string | null;
  readonly treatedSide: Side;
  readonly subject: string;
  readonly image: { readonly width: number; readonly height: number; readonly orientationTag: number };
  readonly card: {
    readonly present: boolean;
    readonly version: string;
    /** Picture [column, row] → card mm, row by row; least squares over the fiducials' corners as imaged. */
    readonly homography: readonly number[];
    /** The same for the ideal camera without distortion. */
    readonly homographyPinhole: readonly number[];
    readonly checkPoints: { readonly imagePx: LineOfPairs; readonly cardMm: LineOfPairs };
    readonly fiducialIds: readonly number[];
    readonly fiducialCornersPx: readonly LineOfPairs[];
    readonly printScale: number;
    readonly barReadsMm: number;
  };
  readonly camera: {
    readonly tiltDeg: number;
    readonly azimuthDeg: number;
    readonly rollDeg: number;
    /** From the pupil to the place on the card's plane that the middle of the picture looks at. */
    readonly distanceMm: number;
    /** Height of the pupil over the card's plane. */
    readonly heightMm: number;
    readonly viewAngleAtNailDeg: number;
    readonly pxPerMmAtNail: number;
    readonly focalPx: number;
    readonly k1: number;
    readonly k2: number;
    /** 10–90 % width of a step edge at the nail before denoising and sharpening. */
    readonly edgeSpreadMm: number;
    readonly jpegQuality: number;
    readonly captureTime: string | null;
  };
  readonly heightOffsetMm: number;
  readonly colour: {
    readonly itaDeg: number;
    readonly labReferenceD65: readonly [number, number, number];
    readonly labPlateauD65: readonly [number, number, number] | null;
    readonly addedBloodShare: number | null;
    readonly edgeWidthMm: number | null;
  };
  readonly itaDeg: number;
  readonly measurements: TruthMeasurements | null;
  readonly outlines: TruthOutlines | null;
}
