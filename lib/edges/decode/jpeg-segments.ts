/**
 * Walks a JPEG stream marker by marker (ITU-T T.81 annex B) up to its first end-of-image marker. Coded data between a
 * start of scan and the next marker is skipped, not decoded.
 */
export interface JpegSegment {
  readonly marker: number;
  /** The segment's content without marker and length. */
  readonly payload: Uint8Array;
  /** Offset of the byte after the segment, before any coded data. */
  readonly end: number;
}

export const START_OF_SCAN = 0xda;
export const END_OF_IMAGE = 0xd9;

/** Markers that stand alone, without a length: restart markers, start of image, and TEM. */
const standsAlone = (marker: number): boolean => (marker >= 0xd0 && marker <= 0xd8) || marker === 0x01;

export function* jpegSegments(bytes: Uint8Array): Generator<JpegSegment> {
  let at = 2;
  while (at < bytes.length) {
    // Cameras leave fill bytes and stray bytes between segments; inside coded data FF 00 is a stuffed byte.
    at = bytes.indexOf(0xff, at);
    if (at < 0 || at + 1 >= bytes.length) return;
    const marker = bytes[at + 1];
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === 0x00 || standsAlone(marker)) {
      at += 2;
      continue;
    }
    if (marker === END_OF_IMAGE) {
      yield { marker, payload: bytes.subarray(at + 2, at + 2), end: at + 2 };
      return;
    }
    const end = at + 2 + ((bytes[at + 2] << 8) | bytes[at + 3]);
    if (!(end >= at + 4 && end <= bytes.length)) return;
    yield { marker, payload: bytes.subarray(at + 4, end), end };
    at = end;
  }
}
