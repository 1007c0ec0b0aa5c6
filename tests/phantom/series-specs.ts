/** The same toe photographed on ten days of two weeks, in other poses and lights each time, while its wound runs a course. */
import type { CardSpec, PhantomSpec, RednessSpec, WoundSpec } from './phantom-spec';
import { randomSpec, type Overrides } from './random-spec';
import { randomToe } from './random-toe';
import { randomSource } from './random/random-source';

export const SERIES_KINDS = ['normal', 'spreading', 'stalled', 'relapse', 'clean'] as const;
export type SeriesKind = (typeof SERIES_KINDS)[number];

/** Days since the procedure. */
export const VISIT_DAYS: readonly number[] = [1, 2, 3, 5, 6, 7, 9, 11, 12, 14];

export interface Visit {
  readonly kind: SeriesKind;
  readonly day: number;
  readonly spec: PhantomSpec;
}

interface Course {
  /** Mean width of the redness and its added blood, both relative to the first days. */
  readonly width: (day: number) => number;
  readonly blood: (day: number) => number;
  readonly tongueMm: (day: number) => number;
  /** How much of the groove is still open. */
  readonly open: (day: number) => number;
}

const ramp = (day: number, from: number, to: number): number => Math.min(1, Math.max(0, (day - from) / (to - from)));

/** Invented courses: redness from the chemical fades within about two weeks when all goes well. */
const COURSES: Readonly<Record<SeriesKind, Course>> = {
  normal: { width: (day) => 1 - 0.75 * ramp(day, 3, 14), blood: (day) => 1 - 0.6 * ramp(day, 3, 14), tongueMm: () => 0, open: (day) => 0.95 - 0.85 * ramp(day, 4, 14) },
  spreading: { width: (day) => 1 - 0.15 * ramp(day, 3, 6) + 1.5 * ramp(day, 6, 14), blood: (day) => 1 + 0.35 * ramp(day, 6, 12), tongueMm: (day) => 9 * ramp(day, 7, 14), open: (day) => 0.95 - 0.2 * ramp(day, 4, 14) },
  stalled: { width: (day) => 1 - 0.12 * ramp(day, 3, 7), blood: (day) => 1 - 0.08 * ramp(day, 3, 7), tongueMm: () => 0, open: () => 0.9 },
  relapse: { width: (day) => 1 - 0.6 * ramp(day, 2, 7) + 1.1 * ramp(day, 9, 14), blood: (day) => 1 - 0.45 * ramp(day, 2, 7) + 0.7 * ramp(day, 9, 13), tongueMm: (day) => 5 * ramp(day, 10, 14), open: (day) => 0.9 - 0.5 * ramp(day, 3, 8) + 0.4 * ramp(day, 9, 14) },
  clean: { width: () => 0, blood: () => 0, tongueMm: () => 0, open: (day) => 0.8 - 0.75 * ramp(day, 3, 12) },
};

function woundOn(course: Course, day: number, first: WoundSpec, redness: RednessSpec): WoundSpec {
  const width = course.width(day);
  const shown: RednessSpec[] = width <= 0 ? [] : [{ ...redness, widthMm: redness.widthMm * width, addedBloodShare: redness.addedBloodShare * course.blood(day), tongueMm: course.tongueMm(day) }];
  return {
    ...first,
    redness: shown,
    swellingMm: first.swellingMm * Math.min(1.4, 0.3 + 0.7 * width),
    rawShare: course.open(day),
    driedBloodCount: day < 6 ? first.driedBloodCount : 0,
    crustCount: day > 6 ? first.crustCount : 0,
    macerationMm: day < 9 ? first.macerationMm : 0,
  };
}

/** Ten visits of one toe. `overrides` hold for every visit; the wound follows the course. */
export function seriesSpecs(kind: SeriesKind, seed: number, overrides: Overrides = {}): Visit[] {
  const base = randomSpec(seed, overrides);
  const random = randomSource(seed, `series ${kind}`);
  const toe = { ...randomToe(seed, overrides.skinClass), ...overrides.toe };
  const redness: RednessSpec = {
    where: 'treatedFold',
    addedBloodShare: random.between(0.018, 0.032),
    widthMm: random.between(2.6, 4),
    edgeMm: random.between(1.2, 3),
    from: random.between(0, 0.15),
    to: random.between(0.7, 0.95),
    raggedness: random.between(0.2, 0.7),
    tongueMm: 0,
    spot: null,
  };
  const first: WoundSpec = { ...base.wound, iodine: 0, granulationMm: 0, swellingMm: random.between(0.3, 0.9) };
  const paper: Partial<CardSpec> = base.card ?? {};
  return VISIT_DAYS.map((day) => {
    const clock = `T${String(random.whole(7, 20)).padStart(2, '0')}:${random.whole(10, 59)}:${random.whole(10, 59)}`;
    const photo = randomSpec(seed * 1000 + day, {
      ...overrides,
      toe,
      skinClass: toe.skin.skinClass,
      card: overrides.card === null ? null : { ...paper, ...overrides.card },
      camera: { phoneSeed: base.camera.phoneSeed, captureTime: `2026-03-${String(1 + day).padStart(2, '0')}${clock}`, ...overrides.camera },
    });
    return { kind, day, spec: { ...photo, wound: { ...woundOn(COURSES[kind], day, first, redness), ...overrides.wound } } };
  });
}
