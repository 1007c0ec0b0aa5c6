/** The toe's surface with everything on it: plate, bed, folds, swelling, granulation, wrinkles. Radii in millimetres. */
import { layeredNoise, valueNoise } from '../random/value-noise';
import type { ToeSpec, WoundSpec } from '../phantom-spec';
import type { NailUnit } from './nail-unit';
import { mix, smoothStep } from './smooth';
import type { ToeBody } from './toe-body';

/** Radius of the finished surface over the bare body's, at an angle and a place on the unrolled skin. */
export type ToeRelief = (baseMm: number, alongMm: number, turnRad: number, acrossMm: number) => number;

/** Where granulation grows: on the treated fold, a third of the way along its side. */
export function granulationCentre(nail: NailUnit): { alongMm: number; acrossMm: number } {
  const margin = nail.marginPoint(nail.treated, nail.cornerShare * 0.4);
  return { alongMm: margin.alongMm, acrossMm: margin.acrossMm - nail.treated * 0.4 };
}

/** Over this width the fold's lip comes down to the nail or the bed. */
const FOLD_LIP_MM = 0.35;

/** The plate is a flatter arch than the toe: up = top − aside² / (2 R), solved for the radius. */
function archRadiusMm(topMm: number, curveRadiusMm: number, turnRad: number): number {
  const sine = Math.sin(turnRad);
  const cosine = Math.cos(turnRad);
  const bow = (sine * sine) / curveRadiusMm;
  if (bow < 1e-7) return topMm / cosine;
  return (-cosine + Math.sqrt(cosine * cosine + 2 * bow * topMm)) / bow;
}

function skinTexture(toe: ToeSpec): (alongMm: number, acrossMm: number) => number {
  const fine = layeredNoise(toe.seed + 1, 2);
  const coarse = valueNoise(toe.seed + 2);
  const crease = valueNoise(toe.seed + 3);
  return (alongMm, acrossMm) => {
    const skin = 0.045 * fine(alongMm * 1.9, acrossMm * 1.9) + 0.16 * coarse(alongMm * 0.14, acrossMm * 0.14);
    if (alongMm < 12) return skin;
    const upstream = Math.exp(-(((alongMm - 21) / 5) ** 2));
    const lines = Math.abs(crease(acrossMm * 1.3, alongMm * 0.18));
    const joint = Math.exp(-(((alongMm - 31) / 5.5) ** 2));
    const wave = alongMm * 0.62 + 0.9 * crease(alongMm * 0.12, acrossMm * 0.16) + 0.006 * acrossMm * acrossMm;
    const creases = Math.max(0, Math.cos(wave * 2 * Math.PI * 0.62)) ** 4 * (0.6 + 0.4 * crease(alongMm * 0.5, acrossMm * 0.3));
    return skin - 0.07 * upstream * (1 - Math.min(1, lines * 6)) - toe.wrinkleDepthMm * joint * creases;
  };
}

/** The relief of one toe on one day. */
export function toeRelief(toe: ToeSpec, wound: WoundSpec, body: ToeBody, nail: NailUnit): ToeRelief {
  const texture = skinTexture(toe);
  const ridges = valueNoise(toe.seed + 4);
  const bumps = layeredNoise(toe.seed + 5, 2);
  const granulation = granulationCentre(nail);
  const { thicknessMm, foldHeightMm, freeEdgeMm, curveRadiusMm } = toe.nail;

  const archMm = (alongMm: number, turnRad: number): number => archRadiusMm(body.topMm(alongMm) + 0.1, curveRadiusMm, turnRad);
  const nailSide = (alongMm: number, turnRad: number, acrossMm: number): number => {
    const arch = archMm(alongMm, turnRad);
    const plate = arch + 0.02 * ridges(acrossMm * 2.2, alongMm * 0.05);
    const bed = arch - thicknessMm - 0.3 + 0.14 * wound.rawShare * bumps(alongMm * 1.1, acrossMm * 1.1);
    const pad = arch - thicknessMm - 0.25;
    const cut = smoothStep(-0.09, 0.09, nail.insideCutMm(alongMm, acrossMm));
    const edge = smoothStep(-0.12, 0.12, nail.behindFreeEdgeMm(alongMm, acrossMm));
    return mix(pad, mix(bed, plate, cut), edge);
  };
  const foldHeight = (alongMm: number, acrossMm: number): number => {
    const side = smoothStep(freeEdgeMm - 1.5, freeEdgeMm + 4, alongMm) * (1 - smoothStep(nail.rootMm, nail.rootMm + 5, alongMm));
    const lateral = nail.lateralShare(alongMm, acrossMm);
    return foldHeightMm * mix(0.6, side, lateral);
  };
  const swelling = (alongMm: number, acrossMm: number, outsideMm: number): number => {
    const side = smoothStep(-1.5, 3, acrossMm * nail.treated);
    const reach = Math.exp(-(((alongMm - (freeEdgeMm + nail.rootMm) / 2) / 8.5) ** 2));
    return wound.swellingMm * side * reach * (1 - Math.exp(-((outsideMm / 0.9) ** 2))) * Math.exp(-((outsideMm / 5.5) ** 2));
  };

  return (base, alongMm, turnRad, acrossMm) => {
    const insideMm = nail.insideMm(alongMm, acrossMm);
    if (insideMm < -9 || Math.abs(turnRad) > 1.45) return base + texture(alongMm, acrossMm);
    const tipShare = smoothStep(freeEdgeMm - 1.9, freeEdgeMm + 0.1, alongMm);
    let radius = base;
    if (insideMm > 0) {
      const edge = mix(base, archMm(alongMm, turnRad), tipShare);
      radius = mix(edge, mix(base, nailSide(alongMm, turnRad, acrossMm), tipShare), smoothStep(0, FOLD_LIP_MM, insideMm));
    } else {
      const outsideMm = -insideMm;
      const within = mix(base, archMm(alongMm, turnRad), tipShare);
      const rim = (1 - Math.exp(-((outsideMm / 0.55) ** 2))) * Math.exp(-((outsideMm / 3) ** 2));
      const skin = mix(within, base + texture(alongMm, acrossMm), smoothStep(0, 3, outsideMm));
      radius = skin + foldHeight(alongMm, acrossMm) * rim + swelling(alongMm, acrossMm, outsideMm);
    }
    if (wound.granulationMm > 0) {
      const away = Math.hypot(alongMm - granulation.alongMm, acrossMm - granulation.acrossMm) / wound.granulationMm;
      if (away < 1.3) radius += 0.75 * wound.granulationMm * (1 - smoothStep(0.2, 1.3, away)) * (1 + 0.25 * bumps(alongMm * 1.6, acrossMm * 1.6));
    }
    return radius;
  };
}
