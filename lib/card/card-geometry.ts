import type { PointMm } from '../units';

/**
 * A calibration card as the detector sees it: nothing but millimetres in the card's own frame. The card that this
 * project prints is one value of this type; `--geometry FILE` brings others.
 */
export interface CardGeometry {
  readonly version: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** The cut-out for the toe, in order, starting and ending on the card's lower edge. The toe comes in from below. */
  readonly notch: readonly PointMm[];
  /** An OpenCV predefined dictionary, e.g. `DICT_4X4_50`. */
  readonly dictionary: string;
  readonly fiducials: readonly Fiducial[];
  readonly patches: readonly Patch[];
  readonly qr: { readonly centre: PointMm; readonly sizeMm: number } | null;
}

export interface Fiducial {
  readonly id: number;
  readonly centre: PointMm;
  /** Side of the black square. */
  readonly sizeMm: number;
}

export interface Patch {
  readonly name: string;
  readonly kind: 'white' | 'grey' | 'colour';
  readonly centre: PointMm;
  readonly widthMm: number;
  readonly heightMm: number;
  /** The code values the printer was asked for; what it printed is unknown on a home card. */
  readonly designSrgb: readonly [number, number, number];
}
