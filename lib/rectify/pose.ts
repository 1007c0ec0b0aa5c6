import {
  FILE_FOCAL_RELATIVE_U,
  FOCAL_FROM_VIEW_TILT_DEG,
  FRAME_35_DIAGONAL_MM,
  PRIOR_FOCAL_35_MM,
  PRIOR_FOCAL_RELATIVE_U,
} from './constants';
import type { Homography } from './homography';
import type { PointMm } from '../units';

/** How the camera stood over the card. */
export interface CardPose {
  /** Angle between the card's normal and the camera's axis, degrees, 0…90. */
  readonly tiltDeg: number;
  /** From the lens to the place asked for, mm. */
  readonly distanceMm: number;
  /** Relative standard uncertainty of the distance. */
  readonly distanceRelativeU: number;
  readonly focalFrom: 'file' | 'view' | 'prior';
  /** Where the lens stands over the card: its foot point in the card's frame and its height above the plane. */
  readonly lens: { readonly acrossMm: number; readonly downMm: number; readonly heightMm: number };
}

type SolvedPose = Pick<CardPose, 'tiltDeg' | 'distanceMm' | 'lens'>;

interface PhotoSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

type Vector = readonly [number, number, number];

/**
 * Tilt and distance from a homography, for a pinhole camera with its axis in the middle of the picture. The focal
 * length is taken from the file; where the file does not say, from the perspective itself when the card leans enough,
 * else from a prior.
 *
 * @param imageFromCard fitted homography
 * @param photo size of the photo, pixels
 * @param focalLength35Mm 35 mm equivalent from the file, or null
 * @param at place on the card to which the distance is stated
 * @example cardPose(h, photo, 26, nailPlace(geometry)).tiltDeg // 12.4
 */
export function cardPose(imageFromCard: Homography, photo: PhotoSize, focalLength35Mm: number | null, at: PointMm): CardPose {
  const centred = centre(imageFromCard, photo);
  const diagonalPx = Math.hypot(photo.widthPx, photo.heightPx);
  const toPx = (focal35Mm: number) => (focal35Mm * diagonalPx) / FRAME_35_DIAGONAL_MM;
  if (focalLength35Mm !== null) {
    return { ...solve(centred, toPx(focalLength35Mm), at), distanceRelativeU: FILE_FOCAL_RELATIVE_U, focalFrom: 'file' };
  }
  const prior = solve(centred, toPx(PRIOR_FOCAL_35_MM), at);
  const seenPx = prior.tiltDeg >= FOCAL_FROM_VIEW_TILT_DEG ? focalFromView(centred) : null;
  if (seenPx !== null && seenPx > toPx(PRIOR_FOCAL_35_MM) * 0.6 && seenPx < toPx(PRIOR_FOCAL_35_MM) * 4) {
    return { ...solve(centred, seenPx, at), distanceRelativeU: PRIOR_FOCAL_RELATIVE_U / 2, focalFrom: 'view' };
  }
  return { ...prior, distanceRelativeU: PRIOR_FOCAL_RELATIVE_U, focalFrom: 'prior' };
}

/** Columns of the map with the picture's middle as origin. */
function centre(h: Homography, photo: PhotoSize): [Vector, Vector, Vector] {
  const cx = (photo.widthPx - 1) / 2;
  const cy = (photo.heightPx - 1) / 2;
  const column = (i: number): Vector => [h[i] - cx * h[6 + i], h[3 + i] - cy * h[6 + i], h[6 + i]];
  return [column(0), column(1), column(2)];
}

function solve([g1, g2, g3]: [Vector, Vector, Vector], focalPx: number, at: PointMm): SolvedPose {
  const unproject = (g: Vector): Vector => [g[0] / focalPx, g[1] / focalPx, g[2]];
  const [a, b, t] = [unproject(g1), unproject(g2), unproject(g3)];
  const scale = 2 / (length(a) + length(b));
  const normal = cross(a, b);
  const cosTilt = Math.min(1, Math.abs(normal[2]) / length(normal));
  const place = [0, 1, 2].map((i) => scale * (a[i] * at.acrossMm + b[i] * at.downMm + t[i])) as unknown as Vector;
  // The lens is the place where all three camera coordinates are zero: solved along the card's two axes and its normal.
  const shift: Vector = [scale * t[0], scale * t[1], scale * t[2]];
  const unit = (v: Vector): Vector => [v[0] / length(v), v[1] / length(v), v[2] / length(v)];
  return {
    tiltDeg: (Math.acos(cosTilt) * 180) / Math.PI,
    distanceMm: length(place),
    lens: {
      acrossMm: -dot(unit(a), shift),
      downMm: -dot(unit(b), shift),
      heightMm: Math.abs(dot(unit(normal), shift)),
    },
  };
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/**
 * Focal length from the two conditions that the card's axes are perpendicular and equally long (Zhang 2000, eq. 3–4),
 * weighed together; null when the view does not fix it.
 */
function focalFromView([g1, g2]: [Vector, Vector, Vector]): number | null {
  const p1 = g1[2] * g2[2];
  const q1 = -(g1[0] * g2[0] + g1[1] * g2[1]);
  const p2 = g1[2] ** 2 - g2[2] ** 2;
  const q2 = g2[0] ** 2 + g2[1] ** 2 - g1[0] ** 2 - g1[1] ** 2;
  const squared = (p1 * q1 + p2 * q2) / (p1 * p1 + p2 * p2);
  return Number.isFinite(squared) && squared > 0 ? Math.sqrt(squared) : null;
}

function length(v: Vector): number {
  return Math.hypot(v[0], v[1], v[2]);
}
