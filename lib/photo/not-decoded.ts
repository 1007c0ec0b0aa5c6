/**
 * Pixels were asked for of which only the file knows: the photo has to be decoded whole. Thrown by whatever reads a part of a photo.
 * @example new NotDecoded('row 3, column 4').message // 'row 3, column 4'
 */
export class NotDecoded extends Error {}
