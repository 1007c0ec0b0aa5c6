import type { MapGrid } from '../rectify/millimetre-map';

/** The millimetre map in the colours that the stage needs: corrected by the card, one value per pixel. */
export interface ToeColours {
  readonly grid: MapGrid;
  /** Linear light relative to the card's white. */
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
  /** 1 where the photo shows this place unclipped. */
  readonly seen: Uint8Array;
  /** Erythema index; NaN where there is no light. */
  readonly erythemaIndex: Float32Array;
}
