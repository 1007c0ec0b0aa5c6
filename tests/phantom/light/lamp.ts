/**
 * One lamp and the light from all around. On the level card, unshaded, the two add up to 1.
 */
import type { LightSpec } from '../phantom-spec';
import { smoothStep } from '../scene/smooth';
import type { Vector } from '../scene/toe-pose';

export interface Lamp {
  /** Unit vector toward the lamp, card frame. */
  readonly toward: Vector;
  /** Strength of the direct light for a surface that faces it; the level card gets `strength · toward[2]`. */
  readonly strength: number;
  readonly ambient: number;
  /** Tangent of half the angle that the lamp fills. */
  readonly spread: number;
  /** How much of the lamp is left at a place by gradient and shadow edge. */
  evenness(acrossMm: number, downMm: number): number;
}

/** The lamp of a spec; `middle` is the place where the gradient is 1. */
export function lampOf(light: LightSpec, middle: readonly [number, number]): Lamp {
  const elevation = (light.elevationDeg * Math.PI) / 180;
  const azimuth = (light.azimuthDeg * Math.PI) / 180;
  const toward: Vector = [Math.cos(elevation) * Math.cos(azimuth), Math.cos(elevation) * Math.sin(azimuth), Math.sin(elevation)];
  const fall = (light.gradientAzimuthDeg * Math.PI) / 180;
  const edge = light.shadowEdge;
  const edgeTurn = ((edge?.azimuthDeg ?? 0) * Math.PI) / 180;
  return {
    toward,
    strength: (1 - light.ambientShare) / toward[2],
    ambient: light.ambientShare,
    spread: Math.tan((light.spreadDeg * Math.PI) / 180),
    evenness(acrossMm, downMm) {
      const along = (acrossMm - middle[0]) * Math.cos(fall) + (downMm - middle[1]) * Math.sin(fall);
      const even = Math.max(0.05, 1 - (light.gradient * along) / 100);
      if (edge === null) return even;
      const beyond = (acrossMm - edge.throughMm[0]) * Math.cos(edgeTurn) + (downMm - edge.throughMm[1]) * Math.sin(edgeTurn);
      return even * (1 - edge.depth * smoothStep(-edge.softMm / 2, edge.softMm / 2, beyond));
    },
  };
}

/**
 * The shine of a surface: the lamp as a bright square window, blurred by the surface's roughness, plus a faint gleam of
 * the surroundings that grows at grazing angles (Schlick 1994).
 */
export function shineOf(lamp: Lamp, n: Vector, view: Vector, sharpness: number): number {
  const facing = n[0] * view[0] + n[1] * view[1] + n[2] * view[2];
  if (facing <= 0) return 0;
  const bx = 2 * facing * n[0] - view[0], by = 2 * facing * n[1] - view[1], bz = 2 * facing * n[2] - view[2];
  const l = lamp.toward;
  const blur = 0.5 - 0.45 * sharpness;
  const half = lamp.spread + 0.06;
  // The window's own two directions: level and upright.
  const level = Math.hypot(l[0], l[1]) || 1;
  const u = Math.abs((-l[1] * bx + l[0] * by) / level);
  const v = Math.abs((-l[0] * l[2] * bx - l[1] * l[2] * by) / level + level * bz);
  const ahead = bx * l[0] + by * l[1] + bz * l[2];
  if (ahead <= 0) return 0.03 * (1 - facing) ** 3;
  const window = (1 - smoothStep(half - blur, half + blur, u)) * (1 - smoothStep(half - blur, half + blur, v));
  const spreadOut = (half * half) / ((half + blur) * (half + blur));
  const fresnel = 0.04 + 0.96 * (1 - facing) ** 5;
  return window * spreadOut * (0.5 + 6 * fresnel) * lamp.strength * 0.5 + 0.12 * fresnel * lamp.ambient;
}
