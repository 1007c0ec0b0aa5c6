/**
 * The closed list of reasons why a file is not opened as a photo, each with one plain sentence for the person who sent
 * it. A refusal is data; the file itself is kept elsewhere.
 */
export type DecodeRefusalId =
  | 'emptyFile'
  | 'fileTooLarge'
  | 'unsupportedFormat'
  | 'corrupt'
  | 'truncated'
  | 'severalPictures'
  | 'tooManyPixels'
  | 'tooSmall'
  | 'unsupportedColour'
  | 'tookTooLong';

export interface DecodeRefusal {
  readonly id: DecodeRefusalId;
  readonly sentence: string;
  /** What was found, for the person who runs the program. Never a place, a name or a serial number. */
  readonly detail?: string;
}

export const DECODE_REFUSAL_SENTENCE: Readonly<Record<DecodeRefusalId, string>> = {
  emptyFile: 'The file is empty. Please choose the photo again.',
  fileTooLarge: 'The file is too large. Please take a photo with the phone’s ordinary setting.',
  unsupportedFormat: 'This kind of file cannot be read. Please send a photo as JPEG, HEIC, PNG or WebP.',
  corrupt: 'The file is damaged and cannot be read. Please send the photo again or take a new one.',
  truncated: 'Part of the photo is missing: it was cut off on the way. Please send it again.',
  severalPictures: 'The file holds a moving picture or several pictures. Please send one single photo.',
  tooManyPixels: 'The photo has too many pixels. Please use the phone’s ordinary setting (12 to 50 megapixels).',
  tooSmall: 'The picture is too small to be measured. Please send the photo itself, not a preview of it.',
  unsupportedColour: 'The colours of this file cannot be read with certainty. Please send the photo as JPEG.',
  tookTooLong: 'Opening this file took too long and was stopped. Please take a new photo.',
};

/**
 * A refusal with the sentence that belongs to it.
 * @param id one of the closed list
 * @param detail what was found, in a few words
 * @returns the refusal as data; nothing is thrown
 * @example decodeRefusal('tooSmall', '8 × 8 px').detail // '8 × 8 px'
 */
export function decodeRefusal(id: DecodeRefusalId, detail?: string): DecodeRefusal {
  const sentence = DECODE_REFUSAL_SENTENCE[id];
  return detail === undefined ? { id, sentence } : { id, sentence, detail };
}
