/** A photo drawn at random from what a patient at home might send. */
import type { CameraSpec, CardSpec, LightSpec, PhantomSpec, PoseSpec, ToeSpec, WoundSpec } from './phantom-spec';
import { heldFromClipping, randomCamera, randomCard, randomLight, randomPose } from './random-photo';
import { randomToe } from './random-toe';
import { randomWound } from './random-wound';
import { randomSource, type RandomSource } from './random/random-source';
import type { SkinClass } from './skin/skin-class';

export interface Overrides {
  readonly subject?: PhantomSpec['subject'];
  readonly toe?: Partial<ToeSpec>;
  readonly skinClass?: SkinClass;
  readonly wound?: Partial<WoundSpec>;
  readonly pose?: Partial<PoseSpec>;
  readonly light?: Partial<LightSpec>;
  readonly camera?: Partial<CameraSpec>;
  readonly card?: Partial<CardSpec> | null;
  readonly ground?: PhantomSpec['ground'];
  readonly groundTone?: number;
  readonly faults?: PhantomSpec['faults'];
}

/** A spec from a seed. What `overrides` says stands; everything else is drawn, and each part by its own stream. */
export function randomSpec(seed: number, overrides: Overrides = {}): PhantomSpec {
  const part = (purpose: string): RandomSource => randomSource(seed, purpose);
  const toe = { ...randomToe(seed, overrides.skinClass), ...overrides.toe };
  const ground = part('ground');
  const card = overrides.card === null ? null : { ...randomCard(part('card'), seed, toe.halfWidthMm), ...overrides.card };
  return {
    seed,
    subject: overrides.subject ?? { kind: 'toe' },
    toe,
    wound: { ...randomWound(part('wound')), ...overrides.wound },
    pose: { ...randomPose(part('pose')), ...overrides.pose },
    light: { ...randomLight(part('light')), ...overrides.light },
    camera: { ...heldFromClipping(randomCamera(part('camera')), card), ...overrides.camera },
    card,
    ground: overrides.ground ?? ground.pick(['wood', 'tiles', 'cloth', 'towel', 'paper'] as const),
    groundTone: overrides.groundTone ?? ground.between(0.35, 1.2),
    faults: overrides.faults ?? [],
  };
}
