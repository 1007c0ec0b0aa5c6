import type { ToeColours } from './toe-colours';

/** What the tissue model was trained with; comes from the model card beside the weights. */
export interface ModelCard {
  readonly version: string;
  /** Output planes, in order. */
  readonly planes: readonly string[];
  readonly pxPerMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Light outside these bounds is set to the nearer one before its logarithm is taken. */
  readonly floor: number;
  readonly ceiling: number;
  readonly logOffset: readonly [number, number, number];
  readonly logScale: number;
  readonly ratioOffset: readonly [number, number];
  readonly ratioScale: number;
}

export const MODEL_CHANNELS = 8;

/**
 * The model's input: log light of the three channels, their two log ratios, where the photo is seen, and the position.
 * The same few lines as in `training/features.py`; a test holds the two together.
 *
 * @param colours the corrected map, on the model's grid
 * @param card the model card
 * @returns channels × rows × columns
 * @throws RangeError when the map has not the size that the model was trained for
 * @example modelInput(colours, card).length // 8 · 448 · 352
 */
export function modelInput(colours: ToeColours, card: ModelCard): Float32Array {
  const { widthPx, heightPx } = colours.grid;
  if (widthPx !== card.widthPx || heightPx !== card.heightPx) {
    throw new RangeError(`modelInput: the map must be ${card.widthPx} × ${card.heightPx} pixels, received ${widthPx} × ${heightPx}`);
  }
  const pixels = widthPx * heightPx;
  const input = new Float32Array(MODEL_CHANNELS * pixels);
  const planes = [colours.red, colours.green, colours.blue];
  const logOf = (light: number) => Math.log(Math.min(card.ceiling, Math.max(card.floor, light)));
  for (let i = 0; i < pixels; i++) {
    input[5 * pixels + i] = colours.seen[i];
    input[6 * pixels + i] = ((i % widthPx) / (widthPx - 1)) * 2 - 1;
    input[7 * pixels + i] = (Math.floor(i / widthPx) / (heightPx - 1)) * 2 - 1;
    // All three channels exactly zero: the photo does not reach here.
    if (planes[0][i] <= 0 && planes[1][i] <= 0 && planes[2][i] <= 0) continue;
    const [red, green, blue] = [logOf(planes[0][i]), logOf(planes[1][i]), logOf(planes[2][i])];
    input[i] = (red - card.logOffset[0]) / card.logScale;
    input[pixels + i] = (green - card.logOffset[1]) / card.logScale;
    input[2 * pixels + i] = (blue - card.logOffset[2]) / card.logScale;
    input[3 * pixels + i] = (red - green - card.ratioOffset[0]) / card.ratioScale;
    input[4 * pixels + i] = (green - blue - card.ratioOffset[1]) / card.ratioScale;
  }
  return input;
}
