import type { Srgb } from './constants';

/** An SVG path drawn with a round pen; its own (0, 0) lies at the place given. */
export interface SheetStroke {
  readonly path: string;
  readonly acrossMm: number;
  readonly downMm: number;
  /** Millimetres of the page for one unit of the path. */
  readonly mmPerUnit: number;
  readonly penMm: number;
  readonly ink: Srgb;
  readonly dashesMm?: readonly number[];
  /** Filled instead of drawn. */
  readonly filled?: boolean;
}

export interface SheetPicture {
  readonly jpeg: Uint8Array;
  readonly acrossMm: number;
  readonly downMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}
