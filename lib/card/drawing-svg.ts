import type { InkedShape } from './inked-shape';

/** A tenth of a micrometre: far below any printer, and short. */
const DECIMALS = 4;
const number = (value: number): string => String(Number(value.toFixed(DECIMALS)));

/**
 * The drawing as an SVG of true size.
 *
 * @param shapes in mm, printed in this order
 * @param size of the page in mm
 * @returns an SVG document whose user unit is one millimetre; it holds no text that came from outside.
 * @example drawingSvg([], { widthMm: 85.6, heightMm: 53.98 }).includes('width="85.6mm"') // true
 */
export function drawingSvg(
  shapes: readonly InkedShape[],
  size: { readonly widthMm: number; readonly heightMm: number },
): string {
  const width = number(size.widthMm);
  const height = number(size.heightMm);
  const paths = shapes.map(({ ink, rings }) => {
    const outline = rings.map((ring) => `M${ring.map((p) => `${number(p.acrossMm)} ${number(p.downMm)}`).join('L')}Z`);
    return `<path fill="rgb(${ink.join(',')})" d="${outline.join('')}"/>`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...paths,
    '</svg>',
    '',
  ].join('\n');
}
