import type { PointMm } from '../units';
import { ID1_CORNER_RADIUS_MM, ID1_HEIGHT_MM, ID1_WIDTH_MM, INK_BLUE } from './constants';
import type { InkedShape } from './inked-shape';
import { strokeOutline } from './stroke-outline';

const LINE_MM = 0.25;
const CORNER_STEPS = 12;

/**
 * The outline of a bank card with its round corners: a card laid on it leaves the same thin line in view all round.
 *
 * @returns one shape, the middle of its line on the nominal edge of ID-1 (ISO/IEC 7810), origin at the top left.
 * @example bankCardOutline().rings.length // 2
 */
export function bankCardOutline(): InkedShape {
  const radius = ID1_CORNER_RADIUS_MM;
  const [left, right, top, bottom] = [radius, ID1_WIDTH_MM - radius, radius, ID1_HEIGHT_MM - radius];
  const corner = (acrossMm: number, downMm: number, startDeg: number): PointMm[] =>
    Array.from({ length: CORNER_STEPS + 1 }, (_, step) => {
      const angle = ((startDeg + (90 * step) / CORNER_STEPS) * Math.PI) / 180;
      return { acrossMm: acrossMm + radius * Math.cos(angle), downMm: downMm + radius * Math.sin(angle) };
    });
  const line = [
    ...corner(right, bottom, 0),
    ...corner(left, bottom, 90),
    ...corner(left, top, 180),
    ...corner(right, top, 270),
  ];
  return { name: 'bank card outline', ink: INK_BLUE, rings: strokeOutline([...line, line[0]], LINE_MM) };
}
