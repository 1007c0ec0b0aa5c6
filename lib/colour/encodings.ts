/**
 * How a colour is written down, as types that cannot be mixed up: each has its own field names, so the compiler
 * refuses a code value where linear light is needed, and a D50 value where a D65 value is needed.
 */

/** sRGB code values, 0…255, as a picture stores them. A fraction appears only where a median lies between two codes. */
export interface SrgbU8 {
  readonly redCode: number;
  readonly greenCode: number;
  readonly blueCode: number;
}

/** Linear light with the sRGB primaries. 1 = the white that is named beside the value (display white or card white). */
export interface LinearRgb {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/** CIE 1931 2° tristimulus values under D65, Y of white = 1. */
export interface Xyz65 {
  readonly x65: number;
  readonly y65: number;
  readonly z65: number;
}

/** CIE 1976 L*a*b*, D65, 2° observer: the project's one colour convention. */
export interface Lab65 {
  readonly l65: number;
  readonly a65: number;
  readonly b65: number;
}

/** CIE 1931 2° tristimulus values under D50, Y of white = 1. Only measured clinic cards come this way. */
export interface Xyz50 {
  readonly x50: number;
  readonly y50: number;
  readonly z50: number;
}

/** CIE 1976 L*a*b*, D50, 2° observer: what a spectrophotometer writes for a printed patch (ISO 13655). */
export interface Lab50 {
  readonly l50: number;
  readonly a50: number;
  readonly b50: number;
}
