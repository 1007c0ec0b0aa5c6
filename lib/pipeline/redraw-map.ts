import type { MeasureInput } from '../measure/measure-input';
import type { EdgeCost } from '../segment/cheapest-path';
import { DRAWN_OUTLINES, type DrawnOutline, edgeCost } from '../segment/edge-cost';
import type { Analysis } from './analysis';

/**
 * What is needed to draw an outline anew and to measure again, without the photo: everything the measuring was asked
 * with, and along which pixels of the map a line is easily drawn.
 */
export interface RedrawMap {
  readonly input: MeasureInput;
  readonly costs: Readonly<Record<DrawnOutline, EdgeCost>>;
}

/**
 * The redraw map of a measured photo.
 *
 * @param analysis one photo's analysis
 * @returns null where nothing was measured, for there is no map of the toe
 * @example redrawMap({ ...analysis, measurement: null }) // null
 */
export function redrawMap({ measurement, colours, fields }: Analysis): RedrawMap | null {
  if (!measurement || !colours || !fields) return null;
  const costs = Object.fromEntries(DRAWN_OUTLINES.map((outline) => [outline, edgeCost(colours, fields, outline)])) as RedrawMap['costs'];
  return { input: measurement.input, costs };
}
