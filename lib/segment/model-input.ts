import type { ReflectanceMap } from '../colour/reflectance-map';

/** What the tissue model was trained with: the model card beside the weights (`weights/toe-tissue.json`). */
export interface ModelCard {
  readonly version: string;
  readonly output: { readonly planes: readonly string[] };
  readonly grid: { readonly pxPerMm: number; readonly widthPx: number; readonly heightPx: number };
  readonly preprocessing: {
    /** Light outside these bounds is set to the nearer one before its natural logarithm is taken. */
    readonly floor: number;
    readonly ceiling: number;
    readonly logOffset: readonly [number, number, number];
    readonly logScale: number;
    readonly ratioOffset: readonly [number, number];
    readonly ratioScale: number;
  };
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
export function modelInput(colours: ReflectanceMap, card: ModelCard): Float32Array {
  const { widthPx, heightPx } = colours.grid;
  const { grid, preprocessing } = card;
  if (widthPx !== grid.widthPx || heightPx !== grid.heightPx) {
    throw new RangeError(`modelInput: the map must be ${grid.widthPx} × ${grid.heightPx} pixels, received ${widthPx} × ${heightPx}`);
  }
  const pixels = widthPx * heightPx;
  const input = new Float32Array(MODEL_CHANNELS * pixels);
  const { red, green, blue, seen } = colours;
  const { floor, ceiling, logOffset, logScale, ratioOffset, ratioScale } = preprocessing;
  const plane = (channel: number) => input.subarray(channel * pixels, (channel + 1) * pixels);
  for (let i = 0; i < pixels; i++) {
    // All three channels exactly zero: the photo does not reach here.
    if (red[i] <= 0 && green[i] <= 0 && blue[i] <= 0) continue;
    const r = Math.log(Math.min(ceiling, Math.max(floor, red[i])));
    const g = Math.log(Math.min(ceiling, Math.max(floor, green[i])));
    const b = Math.log(Math.min(ceiling, Math.max(floor, blue[i])));
    input[i] = (r - logOffset[0]) / logScale;
    input[pixels + i] = (g - logOffset[1]) / logScale;
    input[2 * pixels + i] = (b - logOffset[2]) / logScale;
    input[3 * pixels + i] = (r - g - ratioOffset[0]) / ratioScale;
    input[4 * pixels + i] = (g - b - ratioOffset[1]) / ratioScale;
  }
  plane(5).set(seen);
  const across = Float32Array.from({ length: widthPx }, (_, column) => (column / (widthPx - 1)) * 2 - 1);
  for (let row = 0; row < heightPx; row++) {
    plane(6).set(across, row * widthPx);
    plane(7).fill((row / (heightPx - 1)) * 2 - 1, row * widthPx, (row + 1) * widthPx);
  }
  return input;
}
