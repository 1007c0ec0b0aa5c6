import { BLACK, INK_BLUE, type Srgb } from '../card/constants';
import type { SheetText } from '../card/sheet-layout';
import type { SheetPicture, SheetStroke } from '../card/sheet-stroke';

/** A piece of a page that is never broken, drawn from its own upper left corner. */
export interface SheetBox {
  readonly heightMm: number;
  readonly texts: readonly SheetText[];
  readonly strokes: readonly SheetStroke[];
  readonly pictures: readonly SheetPicture[];
  /** A heading: it never stands last on a page. */
  readonly keepsNext?: boolean;
  /** The head of the table that this is a row of: written again where a page begins with it. */
  readonly head?: SheetBox;
}

export const EMPTY_BOX: SheetBox = { heightMm: 0, texts: [], strokes: [], pictures: [] };

/**
 * Moves a box and all that is in it.
 *
 * @param box as drawn from its corner
 * @param acrossMm to the right
 * @param downMm down
 * @returns the same drawn from elsewhere
 * @example moveBox({ heightMm: 1, texts: [], strokes: [], pictures: [] }, 2, 3).heightMm // 1
 */
export function moveBox(box: SheetBox, acrossMm: number, downMm: number): SheetBox {
  const moved = <Placed extends { readonly acrossMm: number; readonly downMm: number }>(one: Placed): Placed => ({ ...one, acrossMm: one.acrossMm + acrossMm, downMm: one.downMm + downMm });
  return { ...box, texts: box.texts.map(moved), strokes: box.strokes.map(moved), pictures: box.pictures.map(moved) };
}

/**
 * Makes the drawings of a box smaller or larger; letters and pens keep their size.
 *
 * @param box as drawn from its corner
 * @param factor above 0
 * @example scaleBox({ heightMm: 4, texts: [], strokes: [], pictures: [] }, 0.5).heightMm // 2
 */
export function scaleBox(box: SheetBox, factor: number): SheetBox {
  const placed = <Placed extends { readonly acrossMm: number; readonly downMm: number }>(one: Placed): Placed => ({ ...one, acrossMm: one.acrossMm * factor, downMm: one.downMm * factor });
  return {
    ...box,
    heightMm: box.heightMm * factor,
    texts: box.texts.map(placed),
    strokes: box.strokes.map((stroke) => ({ ...placed(stroke), mmPerUnit: stroke.mmPerUnit * factor })),
    pictures: box.pictures.map((picture) => ({ ...placed(picture), widthMm: picture.widthMm * factor, heightMm: picture.heightMm * factor })),
  };
}

/**
 * Words on a line.
 *
 * @param words one line of text
 * @param acrossMm where it begins
 * @param downMm its base line
 * @param sizePt of the letters
 * @param weight of the letters
 * @param ink the sheets' own blue unless told
 * @example sheetText('Day', 0, 4, 9).weight // 'regular'
 */
export const sheetText = (words: string, acrossMm: number, downMm: number, sizePt: number, weight: SheetText['weight'] = 'regular', ink: Srgb = INK_BLUE): SheetText => ({ text: words, acrossMm, downMm, sizePt, weight, ink });

/**
 * A pen's line in the box's own millimetres.
 *
 * @param path SVG, in millimetres
 * @param penMm width of the pen
 * @param ink black unless told
 * @example sheetStroke('M0 0H5', 0.2).mmPerUnit // 1
 */
export const sheetStroke = (path: string, penMm: number, ink: Srgb = BLACK): SheetStroke => ({ path, acrossMm: 0, downMm: 0, mmPerUnit: 1, penMm, ink });
