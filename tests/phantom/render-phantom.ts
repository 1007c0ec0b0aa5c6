/** One photo with its exact truth: spec → scene → light on the sensor → the phone's picture → file. */
import { soften } from './camera/blur';
import { develop } from './camera/develop';
import { encodeJpeg } from './camera/encode-jpeg';
import { expose } from './camera/expose';
import { flatDrawing } from './camera/flat-drawing';
import type { PhantomSpec } from './phantom-spec';
import type { PhantomTruth } from './phantom-truth';
import { buildScene, type Scene } from './scene/build-scene';
import type { CardFace } from './scene/card-face';
import { clothOver } from './scene/cloth-over';
import { sceneTruth } from './truth/scene-truth';

export interface Phantom {
  readonly jpeg: Uint8Array;
  readonly truth: PhantomTruth;
}

/** From side to side, as a selfie camera shows it. */
function mirrored(srgb: Uint8Array, widthPx: number): Uint8Array {
  const flipped = new Uint8Array(srgb.length);
  for (let i = 0; i < srgb.length / 3; i++) {
    const column = i % widthPx;
    flipped.set(srgb.subarray(3 * i, 3 * i + 3), 3 * (i - column + widthPx - 1 - column));
  }
  return flipped;
}

/** The upright picture of a scene as sRGB bytes. */
export function photograph(scene: Scene): Uint8Array {
  const { spec } = scene;
  if (spec.faults.includes('notAPhotograph')) return flatDrawing(scene);
  const cover = spec.faults.includes('tooFewFiducials') ? clothOver(scene) : null;
  const srgb = develop(soften(expose(scene, cover), spec.camera), spec.camera, spec.seed);
  return spec.faults.includes('mirrored') ? mirrored(srgb, spec.camera.widthPx) : srgb;
}

/** Renders a spec; `face` replaces the card that the spec names. The same spec gives the same bytes. */
export async function renderPhantom(spec: PhantomSpec, face?: CardFace): Promise<Phantom> {
  const scene = buildScene(spec, face);
  const jpeg = await encodeJpeg(photograph(scene), spec.camera);
  return { jpeg, truth: sceneTruth(scene) };
}
