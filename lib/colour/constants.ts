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

/** Ink and blur reach this far into a patch or out of a printed part: blur up to 0.35 mm each way. Prior, ours. */
export const PRINT_EDGE_MARGIN_MM = 0.7;
/** Nothing is read nearer to a cut edge than this: scissors miss the line, and the edge throws a shadow. Prior, ours. */
export const CARD_EDGE_MARGIN_MM = 1.2;
/** Bare paper is read on squares of this size at this pitch: small enough to lie between the print. */
export const PAPER_SPOT_MM = 1.2;
export const PAPER_PITCH_MM = 3;
/** A spot is read at this many places each way. */
export const SPOT_READINGS_PER_SIDE = 9;
/**
 * A median code value from here on may be clipped: of a clipped area, noise and compression leave the median within
 * two codes of the end, while a phone's soft shoulder brings unclipped paper up to 250.
 */
export const CLIPPED_FROM_CODE = 252;
/** Huber 1964 and Tukey (Beaton and Tukey 1974): 95 % efficiency for normal errors. */
export const HUBER_TUNING = 1.345;
export const TUKEY_TUNING = 4.685;

/**
 * What is believed of a phone's tone curve and of a printed card before a photo is seen: means and standard deviations
 * of natural logarithms of light. Our own choice, by this reasoning:
 * - Printer and camera cannot be told apart by their slope. A printer's error is the same at every visit and cancels
 *   in a trend, a camera's is not, since phones render every scene anew. So the doubt is put on the camera: its slope
 *   is left nearly free, the printer's hardly.
 * - Cameras show more contrast than sRGB and roll off their highlights, rarely the reverse (Grossberg and Nayar, IEEE
 *   PAMI 2004;26:1272, collect such curves): hence means above zero.
 * - Office prints have a black of density 1.1 to 1.5 (common practice), 3 to 8 % of paper: 5 %, times or by 1.5.
 */
export const TONE_PRIORS = {
  gamma: { mean: 0, sd: 0.15 },
  contrast: { mean: 0.1, sd: 0.2 },
  shoulder: { mean: 0.1, sd: 0.3 },
  printerGamma: { mean: 0, sd: 0.05 },
  printerBlack: { mean: 0, sd: 0.4 },
} as const;
/** Light of printed black relative to paper, see there. */
export const NOMINAL_BLACK = 0.05;
/** Scatter of a home-printed grey about the printer's own curve, colour cast included, in ln light. Own choice. */
export const PATCH_SIGMA = 0.04;
/** Two curves whose errors differ by less, in ln light, cannot be told apart by a dozen patches. Own choice. */
export const CURVE_CHOICE_NOISE = 0.01;
/** Uncertainty of a patch's median code value: rounding, compression, stray light, in codes. Own choice. */
export const CODE_SIGMA = 1;

/**
 * Light of unprinted office paper relative to a perfect diffuser: L* 94, neutral. Paper types of ISO 12647-2 lie at
 * L* 93…95 (from memory). Stands in where no clinic has measured the card.
 */
export const OFFICE_PAPER_LIGHT = ((94 + 16) / 116) ** 3;
/** A patch with more clipped pixels than this shows a reflex or is too bright. Own choice. */
export const PATCH_CLIPPED_SHARE = 0.25;
/** Scatter of bare paper about a smooth field in ln light: noise, fibres, print beside it. Own choice. */
export const PAPER_SIGMA = 0.02;
/** How strongly light is expected to bend across a card, in ln light per half card. Own choice. */
export const PAPER_BEND_SD = 0.5;
/** The same two in code values. */
export const PAPER_CODE_SIGMA = 2;
export const PAPER_BEND_CODE_SD = 60;
/** Fewer usable paper spots cannot carry the six coefficients of a quadratic field twice over. */
export const LEAST_PAPER_SPOTS = 12;
/**
 * Paper this much redder than most of the paper (ln R/G) is a finger or a toe lying on it: skin reflects 1.3 to 2.5 times
 * as much red as green, ln ≥ 0.26, while a second lamp tints paper by a tenth. Own choice.
 */
export const SKIN_ON_PAPER = 0.2;

/**
 * More clipped paper than this: the brightest places are the ones that are missing, so the white that is left is
 * biased. Half of the paper, spread over the card, still carries the six coefficients of the light many times over;
 * of two phantoms with 36 and 49 % clipped, one had no redness and none was found, one was measured within U. Own choice.
 */
export const CLIPPED_SHARE_LIMIT = 0.5;
/**
 * Paper darker than this code: mid-tone skin reflects 0.3 of it in green, there code 43, where one code step is 4 % of
 * light and so 2 units of erythema index. Own choice by that arithmetic.
 */
export const PAPER_CODE_LIMIT = 80;
/**
 * Brightest over darkest paper. At three a bare lamp hangs no higher than the card is wide (inverse square, cosine), and
 * the light on a raised toe is no longer that on the card beside it. Own choice by that arithmetic.
 */
export const UNEVEN_RATIO_LIMIT = 3;
/**
 * Paper's departure from a smooth field, 90th percentile. A shadow's edge c leaves c/2 on either side; sky-lit shadow
 * differs in R/G by about 0.15 c, and c = 0.3 then costs one unit of erythema index. Own choice by that arithmetic.
 */
export const UNEVEN_RESIDUAL_LIMIT = 0.15;
/** Fewer values than this make no median worth dividing by. Own choice. */
export const LEAST_REFERENCE_VALUES = 30;
/**
 * Scatter that eight bits leave even in a perfectly even surface: a step of one code at code 120 is 1.8 % of light,
 * 0.78 EI; a rounding error is uniform, so its standard deviation is that over √12, rounded.
 */
export const QUANTISATION_EI = 0.2;
/** Six gains and borrowings need at least as many patches. */
export const LEAST_MATCH_PATCHES = 6;
/** Scatter of one patch between two photos, relative; departures expected between two cameras, in parts of light. */
export const MATCH_SIGMA = 0.03;
export const MATCH_SD = 0.15;
/** Light added to a patch's own before departures are divided by it: flare and noise of a dark patch. Own choice. */
export const MATCH_FLOOR = 0.02;
/** A tone curve with three parameters needs at least three greys beside white. */
export const LEAST_CLINIC_GREYS = 3;
