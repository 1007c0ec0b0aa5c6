/**
 * The toe without its nail: a bent tube with a superelliptic section that closes to a round tip. Local frame: `along` from
 * the tip toward the ankle, `aside` to the right, `up` toward the camera; `turn` is the angle from straight up.
 */
import type { ToeSpec } from '../phantom-spec';
import { smoothStep } from './smooth';

export interface ToeBody {
  halfWidthMm(alongMm: number): number;
  topMm(alongMm: number): number;
  axisAsideMm(alongMm: number): number;
  /** Radii of one section at the angles that the body was made for. */
  sectionMm(alongMm: number): Float64Array;
}

const WIDTH_ROUNDING = 2.35;
const PROFILE_ROUNDING = 2.9;
const UNDERSIDE = 0.9;

const rounding = (alongMm: number, tipMm: number, power: number): number =>
  alongMm >= tipMm ? 1 : (1 - Math.max(0, 1 - alongMm / tipMm) ** power) ** (1 / power);

/** The pulp is widest before the nail's root; the toe is slimmer behind it and thickens at the joint and the foot. */
const girth = (alongMm: number): number =>
  1 - 0.12 * smoothStep(13, 25, alongMm) + 0.05 * Math.exp(-(((alongMm - 32) / 6) ** 2)) + 0.07 * smoothStep(34, 60, alongMm);

/** The body of a toe, with its sections at the given angles. */
export function toeBody(toe: ToeSpec, turnsRad: Float64Array): ToeBody {
  const n = toe.squareness;
  const sides = turnsRad.map((turn) => Math.abs(Math.sin(turn)) ** n);
  const heights = turnsRad.map((turn) => Math.abs(Math.cos(turn)) ** n * (Math.abs(turn) > Math.PI / 2 ? (UNDERSIDE / toe.flatness) ** -n : 1));
  const halfWidthMm = (alongMm: number): number =>
    toe.halfWidthMm * girth(alongMm) * rounding(alongMm, toe.tipLengthMm, WIDTH_ROUNDING);
  const topMm = (alongMm: number): number =>
    toe.halfWidthMm * toe.flatness * girth(alongMm) ** 0.6 * rounding(alongMm, toe.tipLengthMm * 0.8, PROFILE_ROUNDING);
  return {
    halfWidthMm,
    topMm,
    axisAsideMm: (alongMm) => toe.bendMm * (alongMm / 40) ** 2,
    sectionMm(alongMm) {
      const width = halfWidthMm(alongMm) ** -n;
      const height = topMm(alongMm) ** -n;
      return sides.map((side, i) => (side * width + heights[i] * height) ** (-1 / n));
    },
  };
}
