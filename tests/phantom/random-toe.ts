/** A toe drawn at random. The ranges are judgement. */
import type { NailSpec, SkinSpec, ToeSpec } from './phantom-spec';
import { randomSource, type RandomSource } from './random/random-source';
import { ITA_RANGE_DEG, SKIN_CLASSES, type SkinClass } from './skin/skin-class';

function randomSkin(random: RandomSource, skinClass: SkinClass): SkinSpec {
  return {
    skinClass,
    itaDeg: random.between(...ITA_RANGE_DEG[skinClass]),
    melaninSpread: random.between(0.02, 0.1),
    bloodSpread: random.between(0.05, 0.16),
    hairCount: random.chance(0.45) ? random.whole(4, 45) : 0,
    freckleCount: random.chance(0.3) ? random.whole(2, 14) : 0,
  };
}

function randomNail(random: RandomSource, toeHalfWidthMm: number): NailSpec {
  return {
    halfWidthMm: toeHalfWidthMm * random.between(0.58, 0.72),
    freeEdgeMm: random.between(2.6, 4.2),
    lengthMm: toeHalfWidthMm * random.between(1.1, 1.4),
    whiteEdgeMm: random.between(0.3, 1.6),
    lunulaMm: random.chance(0.7) ? random.between(1.5, 3.8) : 0,
    cornerMm: random.between(3.2, 5.5),
    curveRadiusMm: toeHalfWidthMm * random.between(0.95, 1.45),
    foldHeightMm: random.between(0.8, 1.7),
    thicknessMm: random.between(0.35, 0.8),
    polish: random.chance(0.05) ? [random.between(0.05, 0.6), random.between(0.02, 0.3), random.between(0.02, 0.4)] : null,
  };
}

/** The body of a toe of a seed. */
export function randomToe(seed: number, skinClass?: SkinClass): ToeSpec {
  const random = randomSource(seed, 'toe');
  const halfWidthMm = random.between(9.2, 13);
  return {
    seed,
    foot: random.pick(['left', 'right'] as const),
    halfWidthMm,
    flatness: random.between(0.72, 0.9),
    squareness: random.between(2.1, 2.6),
    tipLengthMm: random.between(8.5, 12),
    bendMm: random.between(-2.5, 2.5),
    wrinkleDepthMm: random.between(0.08, 0.3),
    nail: randomNail(random, halfWidthMm),
    skin: randomSkin(random, skinClass ?? random.pick(SKIN_CLASSES)),
  };
}
