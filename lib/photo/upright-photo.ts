import type { PartPx } from './part-of';

/**
 * A decoded photo as every later stage sees it: upright, sRGB, eight bits, with the few capture facts that matter.
 * Coordinates refer to this picture only; the file's own orientation tag has been applied and forgotten.
 */
export interface UprightPhoto {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Red, green, blue interleaved, row by row: length = widthPx · heightPx · 3 of the photo, or of its part. sRGB code values 0…255. */
  readonly srgb: Uint8Array;
  /** The part whose pixels these are, where not all of the photo was decoded. Sizes and places are always those of the whole. */
  readonly part?: PartPx;
  /** SHA-256 of the file as it was received, lower-case hexadecimal. */
  readonly sha256: string;
  readonly capture: CaptureFacts;
}

/** What the file says about how it was made. Position (GPS) and serial numbers are never read out. */
export interface CaptureFacts {
  readonly format: 'jpeg' | 'png' | 'webp' | 'heic';
  /** `2026-03-02T19:32:31`, the camera's own wall clock; null when the file does not say. */
  readonly localTime: string | null;
  /** `+05:45`; null when the file does not say. Never guessed. */
  readonly utcOffset: string | null;
  readonly focalLengthMm: number | null;
  readonly focalLength35Mm: number | null;
  readonly lensModel: string | null;
  readonly digitalZoom: number | null;
  readonly deviceClass: 'phone' | 'camera' | 'unknown';
  readonly colourSpace: 'srgb' | 'display-p3' | 'cmyk' | 'other-profile' | 'untagged';
  readonly orientationTag: number;
  readonly hasGainMap: boolean;
}
