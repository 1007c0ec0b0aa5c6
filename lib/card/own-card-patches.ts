import type { Patch } from './card-geometry';
import { ID1_WIDTH_MM, type Srgb } from './constants';

/**
 * Grey code values at L* 100, 83⅓, 66⅔, 50, 33⅓, 16⅔ and 0 (CIE 15 lightness, IEC 61966-2-1 encoding, rounded):
 * seven equal steps of lightness. A test computes them with a colour library.
 */
export const GREY_STEPS: readonly number[] = [255, 208, 162, 119, 78, 41, 0];
const [WHITE, , LIGHT_GREY, MID_GREY] = GREY_STEPS;

const grey = (code: number): Srgb => [code, code, code];

function patch(name: string, acrossMm: number, downMm: number, sideMm: number, designSrgb: Srgb): Patch {
  const neutral = designSrgb[0] === designSrgb[1] && designSrgb[1] === designSrgb[2];
  const kind = !neutral ? 'colour' : designSrgb[0] === WHITE ? 'white' : 'grey';
  return { name, kind, centre: { acrossMm, downMm }, widthMm: sideMm, heightMm: sideMm, designSrgb };
}

const RAMP_SIDE_MM = 5;
const ramp = GREY_STEPS.map((code, step) =>
  patch(`ramp${step + 1}`, 32.9 + 5.8 * step, 8.1, RAMP_SIDE_MM, grey(code)),
);

const OUTER_MM = 7.5;
const INNER_MM = 18.3;
const right = (leftMm: number): number => ID1_WIDTH_MM - leftMm;

/**
 * Every patch of the card. The grey row runs along the top; white and grey stand also to both sides of the toe, so
 * that a gradient of light across the card can be told. The colours are of skin, inflamed skin and wound, with a yellow
 * and a blue to span the rest; their values are our own choice. Unfilled white patches are places kept free of ink.
 */
export const OWN_CARD_PATCHES: readonly Patch[] = [
  ...ramp,
  patch('topWhite', 56.3, 14.1, 4.6, grey(WHITE)),
  patch('yellow', 62.1, 14.1, 4.6, [226, 190, 92]),
  patch('blue', 67.9, 14.1, 4.6, [66, 104, 158]),
  patch('leftGrey', OUTER_MM, 18.3, 5, grey(LIGHT_GREY)),
  patch('skinLight', OUTER_MM, 24.1, 5, [232, 190, 168]),
  patch('skinBrown', OUTER_MM, 29.9, 5, [150, 98, 70]),
  patch('skinDeep', OUTER_MM, 35.7, 5, [84, 54, 42]),
  patch('rightGrey', right(OUTER_MM), 18.3, 5, grey(LIGHT_GREY)),
  patch('pink', right(OUTER_MM), 24.1, 5, [222, 140, 132]),
  patch('red', right(OUTER_MM), 29.9, 5, [186, 62, 58]),
  patch('darkRed', right(OUTER_MM), 35.7, 5, [112, 34, 38]),
  patch('leftWhite', INNER_MM, 32.7, 4.4, grey(WHITE)),
  patch('rightWhite', right(INNER_MM), 32.7, 4.4, grey(WHITE)),
  patch('leftMidGrey', INNER_MM, 49.1, 4.4, grey(MID_GREY)),
  patch('rightMidGrey', right(INNER_MM), 49.1, 4.4, grey(MID_GREY)),
];
