import { nothingAt } from '../photo/nothing-at';
import { partOf } from '../photo/part-of';
import type { UprightPhoto } from '../photo/upright-photo';
import type { PointPx } from '../units';
import { LINEAR_LIGHT } from './linear-light';

/** Linear light (green) along a short straight path across an edge, from the dark side to the light side. */
export interface EdgeProfile {
  /** Sample positions along the path, pixels, 0 at the expected edge; equal steps of `stepPx`. */
  readonly light: Float64Array;
  readonly stepPx: number;
  readonly halfLengthPx: number;
}

/**
 * Samples the photo's green channel along a path across an edge.
 *
 * @param photo the upright photo
 * @param at the expected edge point
 * @param direction unit vector from dark to light, pixels
 * @param halfLengthPx how far the path goes each way
 * @param stepPx distance between samples
 * @returns the profile, or null where the path leaves the photo
 * @example sampleEdgeProfile(photo, { row: 10, column: 20 }, { row: 0, column: 1 }, 4, 0.5)?.light.length // 17
 */
export function sampleEdgeProfile(
  photo: UprightPhoto,
  at: PointPx,
  direction: PointPx,
  halfLengthPx: number,
  stepPx: number,
): EdgeProfile | null {
  const count = 2 * Math.round(halfLengthPx / stepPx) + 1;
  const light = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const along = (i - (count - 1) / 2) * stepPx;
    const value = greenLightAt(photo, at.row + along * direction.row, at.column + along * direction.column);
    if (value === null) return null;
    light[i] = value;
  }
  return { light, stepPx, halfLengthPx };
}

/**
 * Green linear light between pixel centres (bilinear).
 *
 * @param photo the upright photo
 * @param row place in the photo, pixels, may be fractional
 * @param column the same across
 * @returns linear light 0…1; null outside the photo
 * @throws NotDecoded where only another part of the photo was decoded
 * @example greenLightAt({ widthPx: 2, heightPx: 2, srgb: Uint8Array.of(0, 0, 0, 0, 255, 0, 0, 0, 0, 0, 255, 0) }, 0.5, 0.5) // 0.5
 */
export function greenLightAt(photo: UprightPhoto, row: number, column: number): number | null {
  const { left, top, widthPx, heightPx } = partOf(photo);
  const r0 = Math.floor(row);
  const c0 = Math.floor(column);
  if (r0 < top || c0 < left || r0 + 1 >= top + heightPx || c0 + 1 >= left + widthPx) return nothingAt(photo, row, column);
  const fr = row - r0;
  const fc = column - c0;
  const at = ((r0 - top) * widthPx + c0 - left) * 3 + 1;
  const below = at + widthPx * 3;
  const upper = LINEAR_LIGHT[photo.srgb[at]] * (1 - fc) + LINEAR_LIGHT[photo.srgb[at + 3]] * fc;
  const lower = LINEAR_LIGHT[photo.srgb[below]] * (1 - fc) + LINEAR_LIGHT[photo.srgb[below + 3]] * fc;
  return upper * (1 - fr) + lower * fr;
}

/** Least contrast (light side over dark side) that still counts as an edge of printed black on paper. */
const LEAST_CONTRAST = 1.5;

/**
 * Where, along a profile, the light crosses half way between its dark and its light end.
 *
 * @returns position in pixels relative to the expected edge, or null when there is no single clear edge
 * @example halfLevelCrossing({ light: Float64Array.of(0, 0, 1, 1), stepPx: 1, halfLengthPx: 1.5 }) // 0
 */
export function halfLevelCrossing(profile: EdgeProfile): number | null {
  const { light, stepPx } = profile;
  const ends = plateaus(light);
  if (ends.bright < LEAST_CONTRAST * ends.dark + 1e-4) return null;
  const half = (ends.dark + ends.bright) / 2;
  let crossing: number | null = null;
  for (let i = 1; i < light.length; i++) {
    const rises = light[i - 1] < half && light[i] >= half;
    if (!rises) continue;
    if (crossing !== null) return null;
    const part = (half - light[i - 1]) / (light[i] - light[i - 1]);
    crossing = (i - 1 + part - (light.length - 1) / 2) * stepPx;
  }
  return crossing;
}

/** Mean light of the outer fifth at either end: dark first, bright last. */
function plateaus(light: Float64Array): { dark: number; bright: number } {
  const n = Math.max(2, Math.round(light.length / 5));
  const mean = (part: Float64Array) => part.reduce((sum, one) => sum + one, 0) / part.length;
  return { dark: mean(light.subarray(0, n)), bright: mean(light.subarray(light.length - n)) };
}

/**
 * Distance over which a (mean) edge rises from 10 % to 90 % of its step.
 *
 * @returns pixels, or null when the profile has no such rise inside its length
 * @example riseDistancePx({ light: Float64Array.of(0, 0, 0, 0.5, 1, 1, 1), stepPx: 1, halfLengthPx: 3 }) // 1.6
 */
export function riseDistancePx(profile: EdgeProfile): number | null {
  const { light, stepPx } = profile;
  const { dark, bright } = plateaus(light);
  if (bright <= dark) return null;
  const level = (share: number) => dark + share * (bright - dark);
  const middle = light.findIndex((value, i) => i > 0 && light[i - 1] < level(0.5) && value >= level(0.5));
  if (middle < 0) return null;
  let low = middle;
  while (low > 0 && light[low - 1] > level(0.1)) low--;
  let high = middle;
  while (high < light.length - 1 && light[high] < level(0.9)) high++;
  if (low === 0) return null;
  const lowAt = low - 1 + (level(0.1) - light[low - 1]) / (light[low] - light[low - 1]);
  const highAt = high - 1 + (level(0.9) - light[high - 1]) / (light[high] - light[high - 1]);
  return (highAt - lowAt) * stepPx;
}
