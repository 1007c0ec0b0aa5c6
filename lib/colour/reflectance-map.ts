import type { MapGrid } from '../rectify/millimetre-map';

/** Linear light of every map pixel relative to bare card paper at the same place: shading and white balance are gone. */
export interface ReflectanceMap {
  readonly grid: MapGrid;
  /** Planes of length widthPx · heightPx; 1 = as bright as the paper. */
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
  /** 1 where the photo shows this place and no channel is clipped; 0 elsewhere. */
  readonly seen: Uint8Array;
}
