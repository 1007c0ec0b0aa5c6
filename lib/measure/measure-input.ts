import type { MapGrid } from '../rectify/millimetre-map';
import type { Measurement, NotMeasuredReason } from '../result';
import type { RawTissue } from '../segment/raw-tissue';
import type { MarginLine, Region } from '../segment/segmentation';
import type { LineMm } from '../units';
import type { CombinedBudget } from './combine-budget';
import type { BodyVariant } from './body-variants';
import type { LensPlace, ToeRelief } from './toe-relief';

/** Everything this stage measures, with its unit: the table of measurands in code. */
export const MEASURAND_UNIT = {
  erythemaArea: 'mm2',
  rednessLoad: '{EI}.mm2',
  reach: 'mm',
  reachP95: 'mm',
  proximalReach: 'mm',
  unrolledArea: 'mm2',
  unrolledReach: 'mm',
  rednessDeltaEi: '{EI}',
  rednessDeltaA: '{deltaA}',
  grooveWidth: 'mm',
  grooveWidthMax: 'mm',
  rawArea: 'mm2',
  maceratedArea: 'mm2',
  foldStripArea: 'mm2',
  rawBeyondMargin: 'mm',
  rawRedShare: '%',
  rawYellowShare: '%',
  rawDarkShare: '%',
  foldBulge: 'mm',
  foldSeenShare: '%',
} as const;

export type Measurand = keyof typeof MEASURAND_UNIT;

/** What is said about redness: it falls together where redness cannot be judged. */
export const REDNESS_MEASURANDS: readonly Measurand[] = [
  'erythemaArea',
  'rednessLoad',
  'reach',
  'reachP95',
  'proximalReach',
  'unrolledArea',
  'unrolledReach',
  'rednessDeltaEi',
  'rednessDeltaA',
];

/** What is summed up over the region: too small where part of it is out of sight. */
export const SUMMED_REDNESS: readonly Measurand[] = ['erythemaArea', 'unrolledArea', 'rednessLoad'];

/** How well the millimetres are known: from the print check, the card's pose and the fiducials. */
export interface ScaleFacts {
  /** Relative standard uncertainty of the printed card's scale: 0.03 unchecked, 0.005 checked. */
  readonly printRelativeU: number;
  /** Angle between the line of sight to the nail and the card's normal. */
  readonly tiltDeg: number;
  /** Camera to nail; null where no focal length was known. */
  readonly distanceMm: number | null;
  readonly distanceRelativeU: number;
  /** Root mean square of what the homography leaves over at the fiducials. */
  readonly homographyResidualMm: number;
  /** What the photo resolves at the nail, not the map's own density. */
  readonly pxPerMm: number;
}

/** A unit vector in the card's plane that points along the toe toward the ankle. */
export interface ToeAxis {
  readonly across: number;
  readonly down: number;
}

/** One value per map pixel, row by row; NaN where there is none (no skin, not seen, clipped, plate, groove, raw). */
export interface RednessPlanes {
  readonly grid: MapGrid;
  /** Erythema index above the reference field. */
  readonly excessEi: Float32Array;
  /** CIELAB a* (lab65) above the reference field; null where colour is not reported. */
  readonly deltaA: Float32Array | null;
  /** Standard uncertainty of the reference field itself; null takes the prior. */
  readonly referenceUEi: number | null;
  readonly referenceUDeltaA: number | null;
}

export interface Outlines {
  readonly erythema: Region | null;
  readonly raw: Region | null;
  readonly macerated: Region | null;
  readonly nailPlate: Region | null;
  readonly toe: Region | null;
  /** Treated side: along the side, round the corner, along the proximal fold. */
  readonly nailFoldMargin: MarginLine | null;
  /** The side alone. */
  readonly marginLateral: LineMm | null;
  readonly cutEdge: { readonly line: LineMm; readonly boundaryUMm: number } | null;
}

export interface MeasureInput {
  readonly scale: ScaleFacts;
  /** Where the lens stood; null where that is not known, and outlines stay as seen. */
  readonly lens?: LensPlace | null;
  /** Set by the stage itself: the toe's body, and the photo over bodies of slightly other shapes. */
  readonly relief?: ToeRelief | null;
  readonly bodyVariants?: readonly BodyVariant[];
  readonly grid: MapGrid;
  /** As the camera shows them in the card's plane. */
  readonly outlines: Outlines;
  readonly redness: RednessPlanes | null;
  /** What the raw surface is made of; null or left out where there is none. */
  readonly rawTissue?: RawTissue | null;
  /** null: from the toe's outline where that allows it, else the card's down. */
  readonly toeAxis: ToeAxis | null;
  /** Erythema area with the threshold one standard uncertainty lower and higher, mm². Then `boundaryUMm` of that
   * region must not contain the threshold again. */
  readonly thresholdAreasMm2?: readonly [number, number];
  /** Standard deviation of one pass (ensemble member, mirrored pass) around the mean of several, in the measurand's unit. */
  readonly passSpread?: Partial<Record<Measurand, { readonly sd: number; readonly passes: number }>>;
  /** What the tissue model leaves over beyond its fields' own spread: one standard deviation, relative and in the unit. */
  readonly modelError?: Partial<Record<Measurand, { readonly relative: number; readonly absolute: number }>>;
  /** How far people differ who draw the same outline: one standard deviation, relative and in the unit. */
  readonly tracing?: Partial<Record<Measurand, { readonly relative: number; readonly absolute: number }>>;
  /** What an earlier stage already knows cannot be measured; it overrules whatever outlines are there. */
  readonly notMeasuredBecause?: Partial<Record<Measurand, NotMeasuredReason>>;
}

export interface ToeMeasurement {
  readonly measurements: Readonly<Record<Measurand, Measurement>>;
  /** Contributions in the unit of each measurand, for those that were measured. */
  readonly budget: Readonly<Partial<Record<Measurand, CombinedBudget>>>;
  /** Facts that explain the numbers and are no measurands. */
  /** The outlines that lengths and areas were taken from: seen straight from above. */
  readonly outlines: Outlines;
  readonly notes: {
    readonly toeAxisFrom: 'given' | 'toeOutline' | 'cardDown';
    /** Share of the projected region on skin seen almost edge-on, where unrolling is held back; null without a cylinder. */
    readonly cappedShare: number | null;
  };
}
