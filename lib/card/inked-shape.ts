import type { RingMm } from '../units';
import type { Srgb } from './constants';

/**
 * One thing to print: an area in millimetres and its ink. The PDF, the SVG and the raster are all drawn from a list of
 * these, so there is no second place where a size could differ. Ring points run clockwise on the page around ink and
 * anticlockwise around a hole; rings of one shape may touch but not overlap, which keeps its area exact.
 */
export interface InkedShape {
  readonly name: string;
  readonly ink: Srgb;
  readonly rings: readonly RingMm[];
}
