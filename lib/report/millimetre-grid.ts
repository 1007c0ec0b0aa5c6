import type { PointMm } from '../units';
import { PAPER } from './constants';
import { svgColour } from './svg-colour';
import { svgNumber } from './svg-path';

/**
 * A line each millimetre and a stronger one each five, counted in the card's own frame.
 *
 * @param widthMm of the picture
 * @param heightMm of the picture
 * @param origin the picture's top left corner on the card
 * @example millimetreGrid(10, 5, { acrossMm: 0, downMm: 0 }).split('<path').length // 16
 */
export function millimetreGrid(widthMm: number, heightMm: number, origin: PointMm): string {
  const upright = wholeMillimetres(origin.acrossMm, widthMm).map((at) => rule(at, `M${svgNumber(at - origin.acrossMm)} 0V${svgNumber(heightMm)}`));
  const level = wholeMillimetres(origin.downMm, heightMm).map((at) => rule(at, `M0 ${svgNumber(at - origin.downMm)}H${svgNumber(widthMm)}`));
  return `<g fill="none" stroke="${svgColour(PAPER)}" stroke-width="0.06">${[...upright, ...level].join('')}</g>`;
}

function wholeMillimetres(fromMm: number, lengthMm: number): number[] {
  const first = Math.ceil(fromMm);
  return Array.from({ length: Math.ceil(fromMm + lengthMm) - first }, (_, i) => first + i);
}

const rule = (at: number, path: string): string => `<path d="${path}" stroke-opacity="${at % 5 === 0 ? 0.3 : 0.12}"/>`;
