/** What is where on the skin, one value per texel of the toe's table; truth is read from the same fields. */
import { layeredNoise } from '../random/value-noise';
import type { PhantomSpec } from '../phantom-spec';
import { rednessField } from './redness-field';
import { limit } from './smooth';
import { granulationCentre } from './toe-relief';
import type { ToeSurface } from './toe-surface';

export interface ToeFields {
  /** Signed distance to the fold margin, positive on the nail's side. */
  readonly insideMm: Float32Array;
  /** Positive on the plate that is left: inside the margin, the cut and the free edge. */
  readonly plateMm: Float32Array;
  /** Positive in the bed laid bare. */
  readonly grooveMm: Float32Array;
  /** Positive on open surface (bed or granulation); roughly in mm. */
  readonly rawMm: Float32Array;
  /** Positive on water-logged skin; roughly in mm. */
  readonly maceratedMm: Float32Array;
  /** Largest share of a plateau, 0…1. */
  readonly rednessShare: Float32Array;
  /** Added blood, share of the dermis. */
  readonly addedBlood: Float32Array;
}

const FAR_MM = -9;
const FAR_FROM_LUMP_MM = 5;
/** Soaked skin ends before this many times its mean width. */
const SOAKED_REACH = 2;
/** The bed shows this far beyond the free edge. */
const HYPONYCHIUM_MM = 0.35;

/** Fills the fields of one toe on one day. */
export function toeFields(spec: Pick<PhantomSpec, 'toe' | 'wound'>, surface: ToeSurface): ToeFields {
  const { rows, columns, alongMm, acrossMm, nail } = surface;
  const { toe, wound } = spec;
  const size = rows * columns;
  const make = (): Float32Array => new Float32Array(size);
  const fields = { insideMm: make(), plateMm: make(), grooveMm: make(), rawMm: make(), maceratedMm: make(), rednessShare: make(), addedBlood: make() };
  const redness = wound.redness.map((one, i) => rednessField(one, nail, toe.seed + 1000 + i));
  const patches = layeredNoise(toe.seed + 21, 2);
  const soaked = layeredNoise(toe.seed + 22, 2);
  const lump = granulationCentre(nail);
  const granulationMm = (along: number, across: number): number => {
    const away = Math.hypot(along - lump.alongMm, across - lump.acrossMm);
    return wound.granulationMm === 0 || away > FAR_FROM_LUMP_MM ? FAR_MM : wound.granulationMm - away + 0.25 * patches(along, across);
  };
  const soakedMm = (along: number, across: number, inside: number): number =>
    wound.macerationMm === 0 || inside < -SOAKED_REACH * wound.macerationMm ? FAR_MM : wound.macerationMm * (0.8 + 0.5 * soaked(along * 0.35, across * 0.35)) + inside;
  for (let r = 0; r < rows; r++) {
    const along = alongMm[r];
    for (let c = 0; c < columns; c++) {
      const i = r * columns + c;
      const across = acrossMm[i];
      const inside = limit(nail.insideMm(along, across), FAR_MM, 9);
      const cut = nail.insideCutMm(along, across);
      const behind = nail.behindFreeEdgeMm(along, across);
      fields.insideMm[i] = Math.max(FAR_MM, Math.min(inside, behind + HYPONYCHIUM_MM));
      fields.plateMm[i] = Math.max(FAR_MM, Math.min(inside, cut, behind));
      const groove = Math.max(FAR_MM, Math.min(inside, -cut, behind));
      fields.grooveMm[i] = groove;
      const open = groove > FAR_MM ? (wound.rawShare * 1.3 - 0.15 - (0.5 + 0.5 * patches(along * 0.3, across * 0.5))) * 3 : FAR_MM;
      fields.rawMm[i] = Math.max(Math.min(groove, open), granulationMm(along, across));
      fields.maceratedMm[i] = Math.max(FAR_MM, Math.min(soakedMm(along, across, inside), -inside, across * nail.treated * 0.7, along - nail.distalMm + 1));
      for (const one of redness) {
        const share = one.share(along, across);
        fields.rednessShare[i] = Math.max(fields.rednessShare[i], share);
        fields.addedBlood[i] = Math.max(fields.addedBlood[i], share * one.addedBloodShare);
      }
    }
  }
  return fields;
}
