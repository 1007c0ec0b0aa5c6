/** Numbers of the colour stage, each with its source. */

/** Highest code value of an eight-bit picture. */
export const MAX_CODE = 255;

/** IEC 61966-2-1:1999, the sRGB transfer curve. */
export const SRGB_CURVE = {
  linearSlope: 12.92,
  offset: 0.055,
  exponent: 2.4,
  decodeBreak: 0.04045,
  encodeBreak: 0.0031308,
} as const;

/**
 * Linear sRGB to XYZ (D65): the matrix that follows exactly from the chromaticities of IEC 61966-2-1 (R .64 .33,
 * G .30 .60, B .15 .06, white .3127 .3290), written as fractions. The standard's own four decimals are this, rounded.
 */
export const LINEAR_TO_XYZ65 = [
  [506752 / 1228815, 87881 / 245763, 12673 / 70218],
  [87098 / 409605, 175762 / 245763, 12673 / 175545],
  [7918 / 409605, 87881 / 737289, 1001167 / 1053270],
] as const;

/** The inverse of `LINEAR_TO_XYZ65`, also exact. */
export const XYZ65_TO_LINEAR = [
  [12831 / 3959, -329 / 214, -1974 / 3959],
  [-851781 / 878810, 1648619 / 878810, 36519 / 878810],
  [705 / 12673, -2585 / 12673, 705 / 667],
] as const;

/** White of the sRGB display, from its chromaticity .3127 .3290 (IEC 61966-2-1), Y = 1. */
export const WHITE_D65 = { x65: 3127 / 3290, y65: 1, z65: 3583 / 3290 } as const;
/** White of the profile connection space, which instruments use for D50 (ICC.1:2022, 7.2.16), Y = 1. */
export const WHITE_D50 = { x50: 0.96422, y50: 1, z50: 0.82521 } as const;

/** CIE 15:2004, L*a*b*: below ε the cube root gives way to a line of slope κ. Exact fractions. */
export const LAB_EPSILON = 216 / 24389;
export const LAB_KAPPA = 24389 / 27;

/** Cone responses of Lam 1985 ("Bradford"), ICC.1:2022 annex E. */
export const BRADFORD = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
] as const;

export type ItaClass = 'veryLight' | 'light' | 'intermediate' | 'tan' | 'brown' | 'dark';

/** Classes of the individual typology angle, lightest first; all below is `dark`. Del Bino and Bernerd 2013. */
export const ITA_CLASS_LOWER_BOUNDS: readonly { readonly itaClass: ItaClass; readonly aboveDeg: number }[] = [
  { itaClass: 'veryLight', aboveDeg: 55 },
  { itaClass: 'light', aboveDeg: 41 },
  { itaClass: 'intermediate', aboveDeg: 28 },
  { itaClass: 'tan', aboveDeg: 10 },
  { itaClass: 'brown', aboveDeg: -30 },
];
