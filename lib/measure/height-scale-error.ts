/**
 * How much too long a length reads that lies above the card's plane, nearer to the camera.
 *
 * @param heightMm height above the card, mm; negative below it
 * @param distanceMm camera to card, mm, > heightMm
 * @returns relative error of lengths, D / (D − h) − 1; areas are off by (1 + it)² − 1
 * @throws RangeError where the camera is not beyond the skin
 * Pinhole camera, line of sight along the card's normal. Source: similar triangles.
 * @example heightScaleError(2, 202) // 0.01
 */
export function heightScaleError(heightMm: number, distanceMm: number): number {
  if (!Number.isFinite(heightMm) || !(distanceMm > heightMm) || !(distanceMm > 0)) {
    throw new RangeError(`heightScaleError: distanceMm must exceed heightMm and 0, received ${distanceMm} and ${heightMm}`);
  }
  return heightMm / (distanceMm - heightMm);
}
