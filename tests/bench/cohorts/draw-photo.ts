import type { EpisodeJson } from '../../../lib/care/episode';
import { FOLLOWED_UNIT, type Followed } from '../../../lib/care/measurement-schema';
import type { RandomSource } from '../../phantom/random/random-source';
import { type CourseTruth, daysIn, trueProximalMm, trueRawMm2, trueReachMm } from './course-truth';

export type PhotoJson = NonNullable<EpisodeJson['checkIns'][number]['photo']>;

/** Per class, very light to dark: how much noisier redness is, and how often it cannot be seen at all. */
const NOISE_BY_CLASS = [1, 1, 1.05, 1.1, 1.2, 1.3] as const;
const HIDDEN_BY_CLASS = [0.005, 0.005, 0.01, 0.02, 0.05, 0.08] as const;
const GROSS_SHARE = 0.004;

/** What one visit's photos share: light and roll, which change slowly from visit to visit. */
export interface VisitLight {
  readonly reachMm: number;
  readonly areaShare: number;
  readonly rollShare: number;
}

/** Light and roll of the next visit, half remembered from the one before. */
export function nextLight(before: VisitLight | null, random: RandomSource): VisitLight {
  const memory = 0.5;
  const renew = Math.sqrt(1 - memory ** 2);
  const step = (from: number, sd: number) => (before ? memory * from + renew * sd * random.normal() : sd * random.normal());
  return { reachMm: step(before?.reachMm ?? 0, 0.35), areaShare: step(before?.areaShare ?? 0, 0.06), rollShare: step(before?.rollShare ?? 0, 0.05) };
}

/** Student's t with 3 degrees of freedom, scaled to a standard deviation of 1: wild values now and then. */
function heavyTailed(random: RandomSource): number {
  const chi = random.normal() ** 2 + random.normal() ** 2 + random.normal() ** 2;
  return random.normal() / Math.sqrt(chi) ;
}

/** A photo of the toe as it is on this day, with the errors of a phone at home. */
export function drawPhoto(truth: CourseTruth, day: number, light: VisitLight, receivedAt: string, random: RandomSource): PhotoJson {
  const noise = NOISE_BY_CLASS[truth.itaClass] * Math.exp(0.25 * random.normal());
  const measurements = random.chance(HIDDEN_BY_CLASS[truth.itaClass]) ? hiddenRedness() : redness(truth, day, light, noise, random);
  return {
    measured: true,
    reasons: [],
    itaDeg: truth.itaDeg + 4 * random.normal(),
    contrastToNoise: Math.max(0.5, 9 / noise + random.normal()),
    receivedAt,
    measurements: { ...measurements, ...wound(truth, day, random) },
  };
}

/** A photo that failed a gate. */
export const refusedPhoto = (receivedAt: string, random: RandomSource): PhotoJson => ({
  measured: false,
  reasons: [random.pick(['blur', 'tilt', 'cardNotFound', 'clipped', 'tooFewFiducials'])],
  receivedAt,
  measurements: {},
});

type Numbers = NonNullable<PhotoJson['measurements']>;

const hiddenRedness = (): Numbers => ({
  reach: { notMeasured: 'contrastTooLow' },
  unrolledReach: { notMeasured: 'contrastTooLow' },
  erythemaArea: { notMeasured: 'contrastTooLow' },
  rednessLoad: { notMeasured: 'contrastTooLow' },
  proximalReach: { notMeasured: 'contrastTooLow' },
});

const notFound = (): Numbers => ({
  reach: { notMeasured: 'noRegionFound' },
  unrolledReach: { notMeasured: 'noRegionFound' },
  erythemaArea: { notMeasured: 'noRegionFound' },
  rednessLoad: { notMeasured: 'noRegionFound' },
  proximalReach: { notMeasured: 'noRegionFound' },
});

function redness(truth: CourseTruth, day: number, light: VisitLight, noise: number, random: RandomSource): Numbers {
  const trueReach = trueReachMm(truth, day);
  // Faint redness comes and goes: below a millimetre it is rarely found, above two nearly always.
  if (random.chance(1 / (1 + Math.exp((trueReach - 0.9) / 0.25)))) return notFound();
  const gross = random.chance(GROSS_SHARE) ? (random.chance(0.7) ? random.between(3, 12) : -0.8 * trueReach) : 0;
  const sd = noise * (0.35 + 0.03 * trueReach);
  const reach = Math.max(0.1, trueReach + light.reachMm * noise + sd * heavyTailed(random) + gross);
  const u = truth.claim * Math.hypot(0.35 * noise, sd);
  const areaNoise = light.areaShare * noise + 0.06 * noise * heavyTailed(random) + (0.3 * (reach - trueReach)) / Math.max(1, trueReach);
  const area = Math.max(0.5, 0.7 * truth.foldLengthMm * trueReach * (1 + areaNoise));
  const areaU = truth.claim * area * 0.1 * noise;
  const projected = truth.projectedShare * (1 + light.rollShare);
  const proximal = Math.max(0.1, trueProximalMm(truth, day) + 0.8 * (light.reachMm * noise + sd * heavyTailed(random)) + gross * truth.proximalShare);
  const load = area * (7 - 0.15 * Math.min(day, 20)) * (1 + 0.08 * noise * random.normal());
  return {
    reach: given('reach', reach * projected, u * projected + 0.1),
    unrolledReach: given('unrolledReach', reach, u),
    proximalReach: given('proximalReach', proximal, u),
    erythemaArea: given('erythemaArea', area, areaU),
    rednessLoad: given('rednessLoad', load, truth.claim * load * 0.13 * noise),
  };
}

function wound(truth: CourseTruth, day: number, random: RandomSource): Numbers {
  const raw = trueRawMm2(truth, day);
  const foldStrip = truth.foldLengthMm * 4;
  const soggy = truth.kind === 'macerated' && daysIn(truth, day) > 0 ? random.between(0.3, 0.5) : Math.max(0, 0.07 + 0.05 * heavyTailed(random));
  const proud = truth.kind === 'over-granulation' && daysIn(truth, day) > 0 ? 1.8 : -1;
  const width = Math.max(0.3, (2.6 * raw) / truth.firstRawMm2 + 0.3);
  return {
    rawArea: raw < 0.8 && random.chance(0.8) ? { notMeasured: 'noRegionFound' } : given('rawArea', Math.max(0.1, raw * (1 + 0.1 * heavyTailed(random)) + 0.3 * random.normal()), truth.claim * Math.hypot(0.1 * raw, 0.3)),
    grooveWidth: given('grooveWidth', Math.max(0.1, width + 0.25 * random.normal()), truth.claim * 0.25),
    maceratedArea: given('maceratedArea', Math.min(0.95, soggy) * foldStrip, truth.claim * (0.1 * soggy * foldStrip + 0.4)),
    foldStripArea: given('foldStripArea', foldStrip * (1 + 0.04 * random.normal()), foldStrip * 0.04),
    ...(random.chance(0.4) ? { rawBeyondMargin: given('rawBeyondMargin', proud + 0.4 * random.normal(), 0.4) } : {}),
    creaseDistance: given('creaseDistance', 17 + 0.5 * random.normal(), 0.5),
  };
}

const given = (name: Followed, value: number, u: number) => ({ value, u, U: 2 * u, unit: FOLLOWED_UNIT[name] }) as never;
