import { GRID_INK } from './constants';
import type { InkedShape } from './inked-shape';
import { rectRing } from './rect-ring';

/** Line widths of millimetre paper: every millimetre, every fifth, every tenth. */
function lineWidthMm(mark: number): number {
  if (mark % 10 === 0) return 0.22;
  return mark % 5 === 0 ? 0.13 : 0.06;
}

/**
 * A panel of millimetre paper.
 *
 * @param widthMm whole millimetres
 * @param heightMm whole millimetres
 * @returns one shape with its origin at the panel's top left. Lines cross, so its area is not exact.
 * @example millimetrePaper(100, 60).rings.length // 162
 */
export function millimetrePaper(widthMm: number, heightMm: number): InkedShape {
  const upright = Array.from({ length: widthMm + 1 }, (_, mark) => {
    const wide = lineWidthMm(mark);
    return rectRing(mark - wide / 2, 0, wide, heightMm);
  });
  const level = Array.from({ length: heightMm + 1 }, (_, mark) => {
    const tall = lineWidthMm(mark);
    return rectRing(0, mark - tall / 2, widthMm, tall);
  });
  return { name: 'millimetre paper', ink: GRID_INK, rings: [...upright, ...level] };
}
