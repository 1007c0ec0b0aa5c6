import type { LineMm } from '../units';

/**
 * A length as SVG has it, to a micrometre of the card.
 * @example svgNumber(1.23456) // '1.235'
 */
export const svgNumber = (lengthMm: number): string => lengthMm.toFixed(3);

/**
 * A line as the `d` of an SVG path, one user unit a millimetre; `Z` behind it makes it a ring.
 * @example svgPath([{ acrossMm: 1, downMm: 2 }, { acrossMm: 3, downMm: 4 }]) // 'M1.000 2.000L3.000 4.000'
 */
export const svgPath = (line: LineMm): string =>
  line.map((point, i) => `${i === 0 ? 'M' : 'L'}${svgNumber(point.acrossMm)} ${svgNumber(point.downMm)}`).join('');
