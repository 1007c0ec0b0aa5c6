/**
 * What the segment stage says about a toe. The stage has two halves with this seam between them: something that fills
 * `TissueFields` (a small learned model), and the pure code that turns fields into outlines and says how much each can
 * be trusted.
 */
import type { IndividualTypologyAngle } from '../colour/individual-typology-angle';
import type { MapGrid } from '../rectify/millimetre-map';
import type { LineMm, RingMm } from '../units';
import type { RawTissue } from './raw-tissue';

/** Per pixel of `grid`, each plane 0…1: how sure it is that this tissue is here. */
export interface TissueFields {
  readonly grid: MapGrid;
  /** Skin and nail of the toe in the notch. */
  readonly toe: Float32Array;
  readonly nailPlate: Float32Array;
  /** Bed and groove laid bare beside the cut edge of the plate, raw or healed. */
  readonly groove: Float32Array;
  /** Plate and groove together: what the nail folds enclose. */
  readonly nailUnit: Float32Array;
  /** A thin line along the nail-fold margin of the treated side. */
  readonly foldMargin: Float32Array;
  readonly raw: Float32Array;
  readonly macerated: Float32Array;
  readonly erythema: Float32Array;
}

/** Which side of the nail was treated, seen with the toe pointing up the page. */
export type TreatedSide = 'left' | 'right';
/** As recorded on the day. */
export type ToldSide = TreatedSide | 'both';

export interface RegionRing {
  readonly ring: RingMm;
  readonly hole: boolean;
}

export interface Region {
  readonly rings: readonly RegionRing[];
  /** 0…1 */
  readonly confidence: number;
  /** Standard uncertainty of where the outline lies, mm. */
  readonly boundaryUMm: number;
}

export interface MarginLine {
  readonly line: LineMm;
  readonly confidence: number;
  readonly boundaryUMm: number;
  readonly origin: 'proposed' | 'carriedOver' | 'confirmed';
}

/** The reference against which redness is judged: a smooth field over the toe, not one number. */
export interface ReferenceSkin {
  readonly region: Region;
  /** 1 where a map pixel counts as reference skin. */
  readonly plain: Uint8Array;
  /** Median colour of the reference skin. */
  readonly ita: IndividualTypologyAngle;
  /** Erythema index that this toe's skin would have everywhere without the redness; one value per map pixel. */
  readonly fieldEi: Float32Array;
  /** Robust standard deviation of the index about the field, after averaging over about a square millimetre. */
  readonly noiseEi: number;
  /** Standard uncertainty of the field itself where the redness is. */
  readonly fieldUEi: number;
}

/** Does the picture support the region, or did the model guess from habit? */
export interface Evidence {
  /** Mean excess of the index in the inner part of the region, EI. */
  readonly plateauEi: number;
  /** Mean excess just inside the outline minus just outside, EI. */
  readonly edgeStepEi: number;
  /** `edgeStepEi` in units of the reference skin's own scatter. */
  readonly contrastToNoise: number;
  readonly verdict: 'supported' | 'weak' | 'tooDark';
}

export interface Segmentation {
  readonly grid: MapGrid;
  readonly toe: Region | null;
  readonly nailPlate: Region | null;
  readonly treatedSide: TreatedSide | null;
  readonly nailFoldMargin: MarginLine | null;
  readonly marginLateral: LineMm | null;
  readonly cutEdge: { readonly line: LineMm; readonly boundaryUMm: number } | null;
  readonly raw: Region | null;
  /** What the raw surface is made of. */
  readonly rawTissue: RawTissue | null;
  readonly macerated: Region | null;
  /** The region as found; `evidence` says whether it may be reported. */
  readonly erythema: Region | null;
  readonly evidence: Evidence | null;
  readonly reference: ReferenceSkin | null;
  /** Least step of the index, EI, that could be told from the skin's scatter in this photo. */
  readonly leastVisibleEi: number | null;
  readonly excessEi: Float32Array | null;
}
