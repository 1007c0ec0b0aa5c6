import type { PointMm, RingMm } from '../units';
import type { Srgb } from './constants';
import type { InkedShape } from './inked-shape';
import { PEN_GLYPHS } from './pen-glyphs';
import { strokeOutline } from './stroke-outline';

const GLYPH_UNITS_HIGH = 6;
const GLYPH_UNITS_WIDE = 4;
/** From one glyph's left edge to the next. */
const ADVANCE_UNITS = 5.8;
const PEN_UNITS = 0.8;

/**
 * How wide a line of pen text is.
 *
 * @param text what `penText` can write
 * @param heightMm of a capital, mm
 * @returns mm, without a gap after the last glyph.
 * @example penTextWidthMm('S', 3) // 2
 */
export function penTextWidthMm(text: string, heightMm: number): number {
  return ((text.length - 1) * ADVANCE_UNITS + GLYPH_UNITS_WIDE) * (heightMm / GLYPH_UNITS_HIGH);
}

/**
 * A line of text written with a drawing pen.
 *
 * @param text glyphs of `PEN_GLYPHS`
 * @param topLeft of the first glyph, mm
 * @param heightMm of a capital
 * @param ink sRGB code values
 * @returns one shape. Strokes of one glyph may cross, so its area is not exact. Refuses a glyph that is not in the
 *   alphabet with a RangeError.
 * @example penText('5 mm', { acrossMm: 1, downMm: 1 }, 2, [0, 0, 0]).name // 'text 5 mm'
 */
export function penText(text: string, topLeft: PointMm, heightMm: number, ink: Srgb): InkedShape {
  const unitMm = heightMm / GLYPH_UNITS_HIGH;
  const rings = [...text].flatMap((glyph, place): RingMm[] => {
    const strokes = PEN_GLYPHS[glyph];
    if (strokes === undefined) throw new RangeError(`penText: no glyph for ${JSON.stringify(glyph)} in ${JSON.stringify(text)}`);
    const left = topLeft.acrossMm + place * ADVANCE_UNITS * unitMm;
    return strokes.flatMap((stroke) => {
      const line = stroke.split(' ').map((point) => {
        const [across, down] = point.split(',').map(Number);
        return { acrossMm: left + across * unitMm, downMm: topLeft.downMm + down * unitMm };
      });
      return strokeOutline(line, PEN_UNITS * unitMm);
    });
  });
  return { name: `text ${text}`, ink, rings };
}
