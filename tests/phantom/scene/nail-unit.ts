/**
 * Where the nail is on the unrolled skin: the U of the fold margin, the cut and the free edge. `acrossMm` is measured
 * along the skin from the toe's middle line, positive to the right.
 */
import { valueNoise } from '../random/value-noise';
import type { ToeSpec, WoundSpec } from '../phantom-spec';

export interface SkinPoint {
  readonly alongMm: number;
  readonly acrossMm: number;
}

export interface NailUnit {
  /** Signed distance to the fold margin: positive on the nail's side. First order, good to a few per cent near it. */
  insideMm(alongMm: number, acrossMm: number): number;
  /** 1 beside the nail, 0 behind it. */
  lateralShare(alongMm: number, acrossMm: number): number;
  /** Positive on the side of the plate that was left. */
  insideCutMm(alongMm: number, acrossMm: number): number;
  /** Positive behind the free edge. */
  behindFreeEdgeMm(alongMm: number, acrossMm: number): number;
  /** The margin of one side from its distal end (0) round the corner to the middle of the proximal fold (1). */
  marginPoint(side: -1 | 1, share: number): SkinPoint;
  /** Share of `marginPoint` where the straight side ends and the corner begins. */
  readonly cornerShare: number;
  /** The cut from the free edge to where it goes under the proximal fold. */
  cutLine(steps: number): SkinPoint[];
  readonly rootMm: number;
  readonly distalMm: number;
  readonly treated: -1 | 1;
}

const CORNER_POWER = 2.5;
/** Farther away nothing asks how far. */
const FAR_MM = 10;

/** The nail unit of a toe whose strip was removed on the wound's side. */
export function nailUnit(toe: ToeSpec, wound: WoundSpec): NailUnit {
  const { nail } = toe;
  const treated = wound.side === 'left' ? -1 : 1;
  const wobble = valueNoise(toe.seed + 11);
  const rootMm = nail.freeEdgeMm + nail.lengthMm;
  const cornerAtMm = rootMm - nail.cornerMm;
  const distalMm = nail.freeEdgeMm + 0.8;
  const middleMm = nail.freeEdgeMm + nail.lengthMm / 2;
  const halfWidth = (alongMm: number, side: number): number =>
    nail.halfWidthMm * (1 + 0.006 * (Math.min(alongMm, cornerAtMm) - middleMm)) + 0.16 * wobble(alongMm * 0.3, side * 5);
  const sideOf = (acrossMm: number): -1 | 1 => (acrossMm < 0 ? -1 : 1);

  const insideMm = (alongMm: number, acrossMm: number): number => {
    if (alongMm > rootMm + FAR_MM || Math.abs(acrossMm) > nail.halfWidthMm + FAR_MM) return -FAR_MM;
    const width = halfWidth(alongMm, sideOf(acrossMm));
    const u = Math.abs(acrossMm) / width;
    const v = Math.max(0, alongMm - cornerAtMm) / nail.cornerMm;
    if (v === 0) return (1 - u) * width;
    const level = (u ** CORNER_POWER + v ** CORNER_POWER) ** (1 / CORNER_POWER);
    const du = (u / level) ** (CORNER_POWER - 1) / width;
    const dv = (v / level) ** (CORNER_POWER - 1) / nail.cornerMm;
    return (1 - level) / Math.sqrt(du * du + dv * dv);
  };
  const cutAt = (alongMm: number): number =>
    halfWidth(middleMm, treated) - wound.stripMm + 0.012 * (alongMm - middleMm) + 0.09 * wobble(alongMm * 0.8, 40);
  const freeEdgeAt = (acrossMm: number): number =>
    nail.freeEdgeMm + 0.012 * acrossMm * acrossMm + 0.18 * wobble(acrossMm * 0.5, 60);
  const cornerShare = (cornerAtMm - distalMm) / (cornerAtMm - distalMm + nail.cornerMm * 0.5 + nail.halfWidthMm * 0.9);

  return {
    insideMm,
    rootMm,
    distalMm,
    treated,
    cornerShare,
    lateralShare(alongMm, acrossMm) {
      const v = Math.max(0, alongMm - cornerAtMm) / nail.cornerMm;
      const u = Math.abs(acrossMm) / nail.halfWidthMm;
      return u ** 3 / (u ** 3 + v ** 3 + 1e-9);
    },
    insideCutMm: (alongMm, acrossMm) => cutAt(alongMm) - treated * acrossMm,
    behindFreeEdgeMm: (alongMm, acrossMm) => alongMm - freeEdgeAt(acrossMm),
    marginPoint(side, share) {
      if (share <= cornerShare) {
        const alongMm = distalMm + (share / cornerShare) * (cornerAtMm - distalMm);
        return { alongMm, acrossMm: side * halfWidth(alongMm, side) };
      }
      const angle = ((share - cornerShare) / (1 - cornerShare)) * (Math.PI / 2);
      const alongMm = cornerAtMm + nail.cornerMm * Math.sin(angle) ** (2 / CORNER_POWER);
      return { alongMm, acrossMm: side * halfWidth(alongMm, side) * Math.max(0, Math.cos(angle)) ** (2 / CORNER_POWER) };
    },
    cutLine(steps) {
      const points: SkinPoint[] = [];
      const startMm = freeEdgeAt(treated * cutAt(nail.freeEdgeMm));
      for (let i = 0; i <= steps; i++) {
        const alongMm = startMm + ((rootMm - startMm) * i) / steps;
        const acrossMm = treated * cutAt(alongMm);
        if (insideMm(alongMm, acrossMm) < 0) break;
        points.push({ alongMm, acrossMm });
      }
      return points;
    },
  };
}
