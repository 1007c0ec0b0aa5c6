/**
 * The millimetre map: the photo resampled to a fixed number of pixels per millimetre in the card's frame. Every step
 * after rectification works on such a grid; none sees camera pixels.
 */
export interface MapGrid {
  /** Card position of the centre of the map's pixel (row 0, column 0). */
  readonly originAcrossMm: number;
  readonly originDownMm: number;
  readonly pxPerMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Linear light per channel, planes of length widthPx · heightPx. */
export interface LinearMap {
  readonly grid: MapGrid;
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
  /** 1 where the photo shows this place and no channel is clipped; 0 elsewhere. */
  readonly seen: Uint8Array;
}
