/** What is where, as pictures on any grid of the card's plane: for whoever needs an answer for every pixel. */
import type { MapGrid } from '../../../lib/rectify/millimetre-map';
import type { Scene } from '../scene/build-scene';
import { onPlane, planeMap } from './plane-map';
import { truthFields } from './toe-truth';

/** One value per pixel of the grid. */
export interface LabelMaps {
  /** 1 or 0. */
  readonly toe: Uint8Array;
  readonly nailPlate: Uint8Array;
  readonly groove: Uint8Array;
  readonly raw: Uint8Array;
  readonly macerated: Uint8Array;
  /** Redness as truth counts it, satellites and untreated fold included. */
  readonly erythema: Uint8Array;
  /** Share of the plateau's added blood, 0…1, also where something lies over it. */
  readonly rednessShare: Float32Array;
  /** Signed distance to the fold margins of both sides along the skin, mm, positive on the nail's side; −9 far away. */
  readonly marginMm: Float32Array;
}

/** The labels of a scene with a toe, seen from straight above. */
export function labelMaps(scene: Scene, grid: MapGrid): LabelMaps {
  if (scene.toe === null) throw new RangeError(`labelMaps: the scene must hold a toe, received subject ${scene.spec.subject.kind}`);
  const map = planeMap(scene.toe, scene.card, grid);
  const fields = truthFields(scene, map);
  const mask = (field: Float32Array): Uint8Array => Uint8Array.from(field, (value) => (value > 0 ? 1 : 0));
  return {
    toe: mask(fields.toe),
    nailPlate: mask(fields.plate),
    groove: mask(fields.groove),
    raw: mask(fields.raw),
    macerated: mask(fields.macerated),
    erythema: mask(fields.erythema),
    rednessShare: onPlane(map, scene.toe, scene.toe.fields.rednessShare, 0),
    marginMm: onPlane(map, scene.toe, scene.toe.fields.insideMm, -9),
  };
}
