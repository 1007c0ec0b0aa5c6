import type { LineMm } from '../units';
import { ID1_HEIGHT_MM, NOTCH_CENTRE } from './constants';

/** Steps of 3°: the chord then stays within 6 µm of a 17 mm arc. */
const ARC_STEPS = 60;

/**
 * One cut line for the toe: up from the card's lower edge, over a half circle, down to the lower edge.
 *
 * @param widthMm distance between the straight sides, mm
 * @returns points in the card's frame, left side first.
 * @example notchOutline(34)[0].downMm // 53.98
 */
export function notchOutline(widthMm: number): LineMm {
  const radius = widthMm / 2;
  const { acrossMm, downMm } = NOTCH_CENTRE;
  const arc = Array.from({ length: ARC_STEPS + 1 }, (_, step) => {
    const angle = Math.PI * (1 + step / ARC_STEPS);
    return { acrossMm: acrossMm + radius * Math.cos(angle), downMm: downMm + radius * Math.sin(angle) };
  });
  return [
    { acrossMm: acrossMm - radius, downMm: ID1_HEIGHT_MM },
    ...arc,
    { acrossMm: acrossMm + radius, downMm: ID1_HEIGHT_MM },
  ];
}
