/**
 * Where the big toes lie in the foot photos that show one from above, read off by eye to about three pixels, and how wide
 * each toe is there. A big toe is taken to be 24 mm wide (common practice: 20–28).
 */
export const TOE_WIDTH_MM = 24;

export interface ToePlace {
  readonly file: string;
  readonly column: number;
  readonly row: number;
  readonly toeWidthPx: number;
  readonly tipDeg: number;
}

export const TOE_PLACES: readonly ToePlace[] = [
  { file: '0033.png', column: 58, row: 126, toeWidthPx: 51, tipDeg: 0 },
  { file: '0717.png', column: 37, row: 98, toeWidthPx: 76, tipDeg: 0 },
  { file: '0217.png', column: 224, row: 84, toeWidthPx: 45, tipDeg: -10 },
  { file: '0566.png', column: 243, row: 80, toeWidthPx: 44, tipDeg: -8 },
  { file: '0833.png', column: 229, row: 90, toeWidthPx: 44, tipDeg: -10 },
  { file: '0549.png', column: 154, row: 132, toeWidthPx: 67, tipDeg: 5 },
  { file: '0164.png', column: 200, row: 75, toeWidthPx: 74, tipDeg: -3 },
];

/** Feet whose skin is darker, judged by eye by whoever gathered the photos. */
export const DARKER: readonly string[] = ['0612.png', '0190.png', '0235.png'];
/** A foot is about 95 mm wide (common practice) and fills some 240 pixels of these photos. */
export const FOOT_PX_PER_MM = 2.5;
