/**
 * Expected values: plane geometry of the pinhole. Something Δz nearer than the plane at distance D looks larger by
 * D / (D − Δz) − 1; a plane tilted by θ, far away, loses 1 − cos θ of its area.
 */
import { describe, expect, it } from 'vitest';
import { pinholeCamera } from '../../phantom/camera/pinhole-camera';
import { cleanSpec } from '../../phantom/fault-spec';
import type { CameraSpec } from '../../phantom/phantom-spec';

const camera = (change: Partial<CameraSpec>) => pinholeCamera({ ...cleanSpec(1).camera, k1: 0, k2: 0, rollDeg: 0, tiltDeg: 0, ...change }, [40, 30]);

function areaPx(change: Partial<CameraSpec>, heightMm: number, halfMm: number): number {
  const eye = camera(change);
  const corners = [[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([x, y]) => eye.project([40 + x * halfMm, 30 + y * halfMm, heightMm]));
  return Math.abs(corners.reduce((sum, { row, column }, i) => {
    const next = corners[(i + 1) % 4];
    return sum + column * next.row - next.column * row;
  }, 0) / 2);
}

const HEIGHTS = [
  [150, 2, 1.35, 2.72], [150, 5, 3.45, 7.02], [150, 10, 7.14, 14.8], [150, 15, 11.11, 23.46],
  [200, 2, 1.01, 2.03], [200, 5, 2.56, 5.19], [200, 10, 5.26, 10.8], [200, 15, 8.11, 16.87],
  [250, 2, 0.81, 1.62], [250, 5, 2.04, 4.12], [250, 10, 4.17, 8.51], [250, 15, 6.38, 13.17],
  [300, 2, 0.67, 1.35], [300, 5, 1.69, 3.42], [300, 10, 3.45, 7.02], [300, 15, 5.26, 10.8],
  [400, 2, 0.5, 1.01], [400, 5, 1.27, 2.55], [400, 10, 2.56, 5.19], [400, 15, 3.9, 7.94],
] as const;

const TILTS = [[5, -0.38], [10, -1.52], [15, -3.41], [20, -6.03], [25, -9.37], [30, -13.4], [40, -23.4]] as const;

describe('the camera of the phantom', () => {
  it.each(HEIGHTS)('from %d mm sees what is %d mm nearer larger by %d %%, its area by %d %%', (distanceMm, heightMm, length, area) => {
    const grown = areaPx({ distanceMm }, heightMm, 5) / areaPx({ distanceMm }, 0, 5);
    expect((Math.sqrt(grown) - 1) * 100).toBeCloseTo(length, 1);
    expect((grown - 1) * 100).toBeCloseTo(area, 1);
  });

  it.each(TILTS)('tilted by %d degrees loses %d %% of the area of a small patch', (tiltDeg, bias) => {
    const shrunk = areaPx({ tiltDeg, azimuthDeg: 37, distanceMm: 1e6 }, 0, 1) / areaPx({ distanceMm: 1e6 }, 0, 1);
    expect((shrunk - 1) * 100).toBeCloseTo(bias, 1);
  });

  it('stands at its distance from the point it looks at', () => {
    const eye = camera({ tiltDeg: 30, azimuthDeg: 200, distanceMm: 250 });
    expect(Math.hypot(eye.pupil[0] - 40, eye.pupil[1] - 30, eye.pupil[2])).toBeCloseTo(250, 9);
    expect(eye.pupil[2]).toBeCloseTo(250 * Math.cos(Math.PI / 6), 9);
    const { column, row } = eye.project([40, 30, 0]);
    expect([column, row]).toEqual([eye.middle.column, eye.middle.row].map((value) => expect.closeTo(value, 9)));
  });

  it('undoes its own distortion', () => {
    const eye = camera({ k1: 0.08, k2: -0.03 });
    const bent = eye.project([70, 55, 0]);
    const straight = eye.project([70, 55, 0], false);
    const x = (bent.column - eye.middle.column) / eye.focalPx, y = (bent.row - eye.middle.row) / eye.focalPx;
    const share = eye.undistortion(x * x + y * y);
    expect(eye.middle.column + eye.focalPx * x * share).toBeCloseTo(straight.column, 6);
    expect(eye.middle.row + eye.focalPx * y * share).toBeCloseTo(straight.row, 6);
  });
});
