/** Flat test targets: printed shapes of exact area, and uniform skin, level in the notch of the card. */
import { cleanSpec } from './fault-spec';
import type { PhantomSpec, PrintedShape } from './phantom-spec';
import type { Overrides } from './random-spec';
import type { SkinClass } from './skin/skin-class';

/** Shapes in the card's plane (or `heightMm` above it); coordinates in true mm of the card's frame. */
export function shapesSpec(seed: number, shapes: readonly PrintedShape[], heightMm = 0, overrides: Overrides = {}): PhantomSpec {
  return cleanSpec(seed, { card: { face: 'own-L' }, ...overrides, subject: { kind: 'shapes', shapes, heightMm } });
}

/** Uniform skin of one class; the right half of the notch has more blood in it. */
export function skinPatchSpec(seed: number, skinClass: SkinClass, addedBloodShare: number, overrides: Overrides = {}): PhantomSpec {
  return cleanSpec(seed, { card: { face: 'own-L' }, ...overrides, skinClass, subject: { kind: 'skinPatch', addedBloodShare } });
}
