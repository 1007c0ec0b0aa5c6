/**
 * What the segment stage says about a toe. The stage has two halves with this seam between them: something that fills
 * `TissueFields` (a classical method, or a small learned model), and the pure code that turns fields into outlines and
 * says how much each can be trusted.
 */
import type { LineMm, RingMm } from '../units';
import type { MapGrid } from '../rectify/millimetre-map';

/** Per pixel of `grid`, each plane 0…1: how sure it is that this tissue is here. */
export interface TissueFields {
  readonly grid: MapGrid;
  readonly toe: Float32Array;
  readonly nailPlate: Float32Array;
  /** Bed and groove laid bare beside the cut edge, raw or healed. */
  readonly groove: Float32Array;
  readonly raw: Float32Array;
  readonly macerated: Float32Array;
  readonly erythema: Float32Array;
}

/** Which side of the nail was treated, seen with the toe pointing up the page. */
export type TreatedSide = 'left' | 'right';

export interface Region {
  readonly rings: readonly { readonly ring: RingMm; readonly hole: boolean }[];
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
