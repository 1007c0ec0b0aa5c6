import { mean, median, quantile } from 'd3-array';
import { blandAltman } from '../../../lib/measure/bland-altman';
import { NORMAL_975 } from '../../../lib/measure/constants';
import { CLASSES } from './common-truth';
import type { Compared, PhotoScore } from './score-photo';

const rounded = (value: number | null | undefined, digits = 4): number | null => (value === null || value === undefined || Number.isNaN(value) ? null : Number(value.toFixed(digits)));
const share = <T>(all: readonly T[], counts: (one: T) => boolean): number | null => (all.length === 0 ? null : rounded(all.filter(counts).length / all.length));

/** The figures of the accuracy table; shares as fractions, null where nothing was there to judge. */
export function summarise(scores: readonly PhotoScore[]) {
  const clean = scores.filter((score) => score.truth.expectedGate === null);
  const faulty = scores.filter((score) => score.truth.expectedGate !== null);
  const tooSoft = clean.filter((score) => (score.truth.edgeSpreadMm ?? 0) > BLUR_LIMIT_MM);
  const sharp = clean.filter((score) => !tooSoft.includes(score));
  const red = clean.filter((score) => (score.truth.measurements?.erythemaArea ?? 0) > 0);
  return {
    photos: scores.length,
    refusedShare: share(red, (score) => score.area === null),
    ...measurands(clean),
    falseErythema: {
      photos: clean.filter((score) => score.falseAreaMm2 !== null).length,
      p95Mm2: rounded(quantile(present(clean, (score) => score.falseAreaMm2), 0.95)),
      overLimitShare: share(present(clean, (score) => score.falseAreaMm2), (area) => area > FALSE_AREA_MM2),
    },
    faults: {
      photos: faulty.length,
      caughtShare: share(faulty, (score) => score.gates.includes(score.truth.expectedGate as string) && !score.measured),
      refusedShare: share(faulty, (score) => !score.measured),
      cleanRefusedShare: share(sharp, (score) => !score.measured),
      /** No fault was planted, but the drawn lens and hand are softer than the gate allows: either answer is right. */
      tooSoft: { photos: tooSoft.length, refusedShare: share(tooSoft, (score) => !score.measured) },
    },
    blandAltman: blandAltmanOf(present(clean, (score) => score.area)),
    byItaClass: groups(clean, CLASSES, (score) => score.truth.skinClass),
    byLight: groups(clean, [...new Set(clean.map((score) => score.truth.light))].sort(), (score) => score.truth.light),
  };
}

export type AccuracySummary = ReturnType<typeof summarise>;

/** Measurement page, quality gates. */
const BLUR_LIMIT_MM = 0.35;
/** Measurement page: false area at most 3 mm² in 95 % of photos without redness. */
const FALSE_AREA_MM2 = 3;

function measurands(clean: readonly PhotoScore[]) {
  const area = present(clean, (score) => score.area);
  const reach = present(clean, (score) => score.reach);
  const unrolledArea = present(clean, (score) => score.unrolledArea);
  const unrolledReach = present(clean, (score) => score.unrolledReach);
  const groove = present(clean, (score) => score.groove);
  const squares = clean.flatMap((score) => score.marginSquaresMm2);
  return {
    erythemaArea: {
      photos: area.length,
      medianRelError: rounded(median(area, relative)),
      p95RelError: rounded(quantile(area.map(relative), 0.95)),
      bias: rounded(median(area, ({ error, truth }) => error / truth)),
      coverage: share(area, covered),
      medianRelU: rounded(median(area, ({ U, truth }) => U / truth)),
    },
    reach: {
      medianMm: rounded(median(reach, absolute)),
      p95Mm: rounded(quantile(reach.map(absolute), 0.95)),
      bias: rounded(median(reach, ({ error }) => error)),
      coverage: share(reach, covered),
    },
    unrolledArea: { medianRelError: rounded(median(unrolledArea, relative)), p95RelError: rounded(quantile(unrolledArea.map(relative), 0.95)), coverage: share(unrolledArea, covered) },
    unrolledReach: {
      photos: unrolledReach.length,
      medianMm: rounded(median(unrolledReach, absolute)),
      p95Mm: rounded(quantile(unrolledReach.map(absolute), 0.95)),
      coverage: share(unrolledReach, covered),
    },
    nailFoldMargin: {
      rmsMm: rounded(squares.length > 0 ? Math.sqrt(mean(squares) as number) : null),
      medianPhotoRmsMm: rounded(median(clean.filter((score) => score.marginSquaresMm2.length > 0), (score) => Math.sqrt(mean(score.marginSquaresMm2) as number))),
      foundShare: share(clean, (score) => score.marginSquaresMm2.length > 0),
    },
    grooveWidth: {
      medianMm: rounded(median(groove, absolute)),
      bias: rounded(median(groove, ({ error }) => error)),
      coverage: share(groove, covered),
      foundShare: share(clean, (score) => score.groove !== null),
    },
    rawArea: { medianRelError: rounded(median(present(clean, (score) => score.raw), relative)) },
    length: {
      medianRelError: rounded(median(present(clean, (score) => score.lengthRelError), Math.abs), 5),
      p95RelError: rounded(quantile(present(clean, (score) => score.lengthRelError).map(Math.abs), 0.95), 5),
    },
    pose: {
      tiltMedianErrorDeg: rounded(median(present(clean, (score) => score.tiltErrorDeg), Math.abs)),
      distanceMedianErrorMm: rounded(median(present(clean, (score) => score.distanceErrorMm), Math.abs)),
    },
  };
}

function groups(clean: readonly PhotoScore[], names: readonly string[], nameOf: (score: PhotoScore) => string) {
  return Object.fromEntries(
    names.map((name) => {
      const group = clean.filter((score) => nameOf(score) === name);
      const red = group.filter((score) => (score.truth.measurements?.erythemaArea ?? 0) > 0);
      const { erythemaArea, reach } = measurands(group);
      return [name, { photos: group.length, refusedShare: share(red, (score) => score.area === null), erythemaArea, reach }];
    }),
  );
}

function blandAltmanOf(area: readonly Compared[]) {
  if (area.length < 3) return null;
  const agreement = blandAltman(area.map(({ truth, error }) => truth + error), area.map(({ truth }) => truth), NORMAL_975, NORMAL_975);
  return {
    biasMm2: rounded(agreement.bias.value, 2),
    sdMm2: rounded(agreement.sd, 2),
    limitsMm2: [rounded(agreement.lowerLimit.value, 2), rounded(agreement.upperLimit.value, 2)],
  };
}

const present = <T>(scores: readonly PhotoScore[], pick: (score: PhotoScore) => T | null): T[] =>
  scores.map(pick).filter((value): value is T => value !== null);
const relative = ({ error, truth }: Compared): number => Math.abs(error) / truth;
const absolute = ({ error }: Compared): number => Math.abs(error);
const covered = ({ error, U }: Compared): boolean => Math.abs(error) <= U;
