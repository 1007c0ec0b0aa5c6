import { FRAME_35_DIAGONAL_MM } from '../../../lib/rectify/constants';
import type { Homography } from '../../../lib/rectify/homography';
import type { PointMm, PointPx } from '../../../lib/units';

/** Where a made-up pinhole camera stands over the card. */
export interface CameraSpec {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Scale at `lookAt`, which lies in the middle of the picture. */
  readonly pxPerMm: number;
  readonly distanceMm: number;
  readonly lookAt: PointMm;
  readonly tiltDeg: number;
  /** Direction toward which the card leans away. */
  readonly azimuthDeg: number;
  /** Turn of the phone about its own axis. */
  readonly rollDeg: number;
}

export const LEVEL_CAMERA: CameraSpec = {
  widthPx: 1200, heightPx: 900, pxPerMm: 10, distanceMm: 300, lookAt: { acrossMm: 42.8, downMm: 27 },
  tiltDeg: 0, azimuthDeg: 0, rollDeg: 0,
};

type Matrix = readonly (readonly number[])[];

const radians = (deg: number): number => (deg * Math.PI) / 180;

function product(a: Matrix, b: Matrix): Matrix {
  return a.map((row) => b[0].map((_, j) => row.reduce((sum, value, k) => sum + value * b[k][j], 0)));
}

function turnAboutAxis(deg: number): Matrix {
  const [c, s] = [Math.cos(radians(deg)), Math.sin(radians(deg))];
  return [[c, -s, 0], [s, c, 0], [0, 0, 1]];
}

/** Turn to the azimuth, lean by the tilt, turn back, then roll the phone. */
function rotation({ tiltDeg, azimuthDeg, rollDeg }: CameraSpec): Matrix {
  const [c, s] = [Math.cos(radians(tiltDeg)), Math.sin(radians(tiltDeg))];
  const lean: Matrix = [[c, 0, -s], [0, 1, 0], [s, 0, c]];
  return product(turnAboutAxis(rollDeg + azimuthDeg), product(lean, turnAboutAxis(-azimuthDeg)));
}

/** Focal length in pixels and as the 35 mm equivalent over the picture's diagonal (CIPA DCG-001). */
export function focalLength(spec: CameraSpec): { readonly px: number; readonly equivalent35Mm: number } {
  const px = spec.pxPerMm * spec.distanceMm;
  return { px, equivalent35Mm: (px * FRAME_35_DIAGONAL_MM) / Math.hypot(spec.widthPx, spec.heightPx) };
}

/** Where a point appears that lies `heightMm` above the card, toward the camera: pinhole projection, written out. */
export function project(spec: CameraSpec, point: PointMm, heightMm = 0): PointPx {
  const r = rotation(spec);
  const from = [point.acrossMm - spec.lookAt.acrossMm, point.downMm - spec.lookAt.downMm, -heightMm];
  const [x, y, z] = r.map((row) => row[0] * from[0] + row[1] * from[1] + row[2] * from[2]);
  const scale = focalLength(spec).px / (spec.distanceMm + z);
  return { column: (spec.widthPx - 1) / 2 + scale * x, row: (spec.heightPx - 1) / 2 + scale * y };
}

/** The same camera as one map of the card's plane. */
export function imageFromCardOf(spec: CameraSpec): Homography {
  const r = rotation(spec);
  const focalPx = focalLength(spec).px;
  const camera: Matrix = [[focalPx, 0, (spec.widthPx - 1) / 2], [0, focalPx, (spec.heightPx - 1) / 2], [0, 0, 1]];
  const { acrossMm, downMm } = spec.lookAt;
  const placed = r.map((row, i) => [row[0], row[1], -row[0] * acrossMm - row[1] * downMm + (i === 2 ? spec.distanceMm : 0)]);
  const flat = product(camera, placed).flat();
  return flat.map((value) => value / flat[8]) as unknown as Homography;
}
