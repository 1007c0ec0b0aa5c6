import type { PointPx } from '../units';

/** A square fiducial seen in a picture: its id and four corners, clockwise from the marker's own top left. */
export interface FoundFiducial {
  readonly id: number;
  readonly cornersPx: readonly PointPx[];
}
