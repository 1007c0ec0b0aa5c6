import type { DecodeRefusalId } from '../../../lib/photo/decode-refusals';

/** Files made by others that have to be refused, and why (see SOURCES.md beside them); every other one has to be decoded. */
export const REFUSED: Readonly<Record<string, DecodeRefusalId>> = {
  'animated.avif': 'unsupportedFormat',
  'animated.gif': 'unsupportedFormat',
  'animated.webp': 'severalPictures',
  'animated_apng.png': 'severalPictures',
  'avif_irot1.avif': 'unsupportedFormat',
  'bomb_44_bytes.gif': 'unsupportedFormat',
  'bomb_text_chunk.png': 'tooSmall',
  'broken.png': 'corrupt',
  'cmyk_adobe_noprofile.jpg': 'tooSmall',
  'corrupt_boxes_a.heif': 'corrupt',
  'corrupt_header.jpg': 'corrupt',
  'giant_20000x14000.jpg': 'tooManyPixels',
  'gps_tiny.jpg': 'tooSmall',
  'lossless_sof3.jpg': 'unsupportedFormat',
  'orientation_2x1.jpg': 'tooSmall',
  'p3_red.png': 'tooSmall',
  'png16_rgb_trns.png': 'tooSmall',
  'truncated.jpg': 'truncated',
  'truncated.png': 'truncated',
  'zero_width.gif': 'unsupportedFormat',
};
