/**
 * A pinhole with radial distortion over the card's plane. Card frame: across to the right, down the page, height toward
 * the camera; picture frame: column to the right, row down, centre of the top left pixel (0, 0).
 */
import type { CameraSpec } from '../phantom-spec';
import type { Vector } from '../scene/toe-pose';

export interface PinholeCamera {
  readonly pupil: Vector;
  readonly focalPx: number;
  /** Unit vectors of the picture in the card's frame: to the right, down, into the scene. */
  readonly right: Vector;
  readonly down: Vector;
  readonly forward: Vector;
  readonly middle: { readonly column: number; readonly row: number };
  /** Where a point of space is seen; with the lens's distortion unless told otherwise. */
  project(point: Vector, distorted?: boolean): { row: number; column: number };
  /** Share of the distorted place in the picture that the undistorted one lies at. */
  undistortion(radiusSquared: number): number;
}

/** Diagonal of the 36 × 24 mm film frame that focal lengths are quoted for. */
const FILM_DIAGONAL_MM = Math.hypot(36, 24);

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const combine = (...terms: readonly (readonly [number, Vector])[]): Vector =>
  [0, 1, 2].map((k) => terms.reduce((sum, [weight, vector]) => sum + weight * vector[k], 0)) as unknown as Vector;
const unit = (v: Vector): Vector => combine([1 / Math.hypot(...v), v]);

/** The camera of a spec, aimed at a point of the card's plane. */
export function pinholeCamera(camera: CameraSpec, aim: readonly [number, number]): PinholeCamera {
  const tilt = (camera.tiltDeg * Math.PI) / 180;
  const azimuth = (camera.azimuthDeg * Math.PI) / 180;
  const roll = (camera.rollDeg * Math.PI) / 180;
  const away: Vector = [Math.sin(tilt) * Math.cos(azimuth), Math.sin(tilt) * Math.sin(azimuth), Math.cos(tilt)];
  const pupil = combine([1, [aim[0], aim[1], 0]], [camera.distanceMm, away]);
  const forward = combine([-1, away]);
  const level = unit(combine([1, [1, 0, 0]], [-forward[0], forward]));
  const upright = unit(combine([1, [0, 1, 0]], [-forward[1], forward], [-level[1], level]));
  const right = combine([Math.cos(roll), level], [Math.sin(roll), upright]);
  const down = combine([-Math.sin(roll), level], [Math.cos(roll), upright]);
  const focalPx = (camera.focal35Mm * Math.hypot(camera.widthPx, camera.heightPx)) / FILM_DIAGONAL_MM;
  const middle = { column: (camera.widthPx - 1) / 2, row: (camera.heightPx - 1) / 2 };
  const { k1, k2 } = camera;
  return {
    pupil, focalPx, right, down, forward, middle,
    project(point, distorted = true) {
      const ray = combine([1, point], [-1, pupil]);
      const depth = dot(ray, forward);
      const x = dot(ray, right) / depth;
      const y = dot(ray, down) / depth;
      const r2 = x * x + y * y;
      const bent = distorted ? 1 + r2 * (k1 + r2 * k2) : 1;
      return { column: middle.column + focalPx * bent * x, row: middle.row + focalPx * bent * y };
    },
    undistortion(radiusSquared) {
      let share = 1;
      for (let i = 0; i < 12; i++) {
        const r2 = radiusSquared * share * share;
        share = 1 / (1 + r2 * (k1 + r2 * k2));
      }
      return share;
    },
  };
}

/** Pixels per millimetre of the card's plane near a place: the root of the area's scale. */
export function pxPerMmAt(camera: PinholeCamera, acrossMm: number, downMm: number): number {
  const step = 0.05;
  const at = (dx: number, dy: number): { row: number; column: number } => camera.project([acrossMm + dx, downMm + dy, 0]);
  const [l, r, u, d] = [at(-step, 0), at(step, 0), at(0, -step), at(0, step)];
  const det = (r.column - l.column) * (d.row - u.row) - (r.row - l.row) * (d.column - u.column);
  return Math.sqrt(Math.abs(det)) / (2 * step);
}
