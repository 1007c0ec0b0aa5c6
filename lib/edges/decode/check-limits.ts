/** The limits that a header alone can break; nothing has been decoded when they are applied. */
import { MAX_FILE_BYTES, MAX_PIXELS, MIN_LONG_EDGE_PX } from '../../photo/constants';
import { decodeRefusal, type DecodeRefusal } from '../../photo/decode-refusals';

export interface DecodeLimits {
  readonly maxPixels: number;
  readonly minLongEdgePx: number;
  readonly maxFileBytes: number;
}

export const DECODE_LIMITS: DecodeLimits = {
  maxPixels: MAX_PIXELS,
  minLongEdgePx: MIN_LONG_EDGE_PX,
  maxFileBytes: MAX_FILE_BYTES,
};

/** `checkLimits(20000, 14000, DECODE_LIMITS)?.id` → 'tooManyPixels'; null when the size is one to measure on. */
export function checkLimits(widthPx: number, heightPx: number, limits: DecodeLimits): DecodeRefusal | null {
  const size = `${widthPx} × ${heightPx} px`;
  if (widthPx < 1 || heightPx < 1) return decodeRefusal('corrupt', size);
  if (widthPx * heightPx > limits.maxPixels) return decodeRefusal('tooManyPixels', size);
  if (Math.max(widthPx, heightPx) < limits.minLongEdgePx) return decodeRefusal('tooSmall', size);
  return null;
}
