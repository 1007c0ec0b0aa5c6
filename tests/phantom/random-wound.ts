/** The operated side of a nail on some day, drawn at random. The ranges are judgement; common practice where noted. */
import type { RednessSpec, WoundSpec } from './phantom-spec';
import type { RandomSource } from './random/random-source';

function foldRedness(random: RandomSource, where: 'treatedFold' | 'untreatedFold'): RednessSpec {
  const from = random.between(0, 0.3);
  return {
    where,
    addedBloodShare: random.between(0.012, 0.042),
    widthMm: random.between(1.6, 6.5),
    edgeMm: random.between(1, 4),
    from,
    to: random.between(Math.max(0.5, from + 0.25), 1),
    raggedness: random.between(0.1, 1),
    tongueMm: random.chance(0.3) ? random.between(3, 12) : 0,
    spot: null,
  };
}

/** Redness of any kind: at the treated fold mostly, also none, on both sides, or somewhere that has nothing to do with it. */
export function randomRedness(random: RandomSource): RednessSpec[] {
  const kind = random.next();
  const all: RednessSpec[] = kind < 0.14 ? [] : [foldRedness(random, 'treatedFold')];
  if (random.chance(0.1)) all.push(foldRedness(random, 'untreatedFold'));
  if (random.chance(0.12)) {
    const spot = random.pick([[random.between(28, 36), random.between(-6, 6)], [random.between(2, 4), random.between(-5, 5)], [random.between(22, 30), random.between(-10, 10)]] as const);
    all.push({ ...foldRedness(random, 'treatedFold'), where: 'elsewhere', widthMm: random.between(1.5, 4.5), tongueMm: 0, spot });
  }
  return all;
}

/** The operated side on some day; 2–3 mm of plate removed, as seen from above, is common practice. */
export function randomWound(random: RandomSource): WoundSpec {
  const open = random.chance(0.75);
  return {
    side: random.pick(['left', 'right'] as const),
    stripMm: random.between(2, 3.1),
    redness: randomRedness(random),
    swellingMm: random.chance(0.6) ? random.between(0.1, 1.3) : 0,
    rawShare: open ? random.between(0.3, 1) : 0,
    granulationMm: open && random.chance(0.3) ? random.between(0.9, 2.1) : 0,
    sloughShare: open && random.chance(0.4) ? random.between(0.1, 0.6) : 0,
    driedBloodCount: random.chance(0.45) ? random.whole(1, 5) : 0,
    crustCount: random.chance(0.35) ? random.whole(1, 3) : 0,
    macerationMm: random.chance(0.25) ? random.between(0.6, 2.6) : 0,
    iodine: random.chance(0.1) ? random.between(0.25, 0.8) : 0,
    wetness: random.between(0, 0.9),
  };
}
