import { median } from 'd3-array';
import { OWN_CARD } from '../../../lib/card/own-card';
import { printCheck } from '../../../lib/card/print-check';
import { analysisPorts } from '../../../lib/edges/analysis-ports';
import { analysePhoto } from '../../../lib/pipeline/analyse-photo';
import { METHOD_VERSION } from '../../../lib/pipeline/method-version';
import type { Measurement } from '../../../lib/result';
import { renderKept } from '../../phantom/render-kept';
import type { Phantom } from '../../phantom/render-phantom';
import { type Factor, FACTORS, levelSpec, TOES } from './factors';
import { measureAnyway } from './measure-anyway';

export const STUDIED = ['erythemaArea', 'reach', 'grooveWidth', 'rawArea'] as const;
type Studied = (typeof STUDIED)[number];

/** One measurand in one photo: error and expanded uncertainty, or why there is no number. */
type Outcome = { readonly error: number; readonly U: number; readonly truth: number } | { readonly notMeasured: string };
interface Taken {
  readonly refusedBy: readonly string[];
  readonly outcomes: Readonly<Record<Studied, Outcome>> | null;
}

export interface LevelResult {
  readonly level: number | string;
  readonly photos: number;
  readonly refused: number;
  readonly gates: readonly string[];
  /** Errors of all photos, also those that a gate refused; areas relative to the truth, lengths in mm. */
  readonly measurands: Readonly<Record<Studied, MeasurandLevel>>;
}
export interface MeasurandLevel {
  readonly errors: readonly number[];
  readonly medianAbsError: number | null;
  readonly medianU: number | null;
  readonly outsideU: number;
  readonly notMeasured: readonly string[];
}

/** Renders every level on every toe and analyses it, with its card's scale as a person would read it from the bar. */
export async function runSensitivity(say: (text: string) => void) {
  const jobs = FACTORS.flatMap((factor) => factor.levels.filter((level) => level !== factor.baseLevel).map((level) => ({ factor, level })));
  const specs = [...TOES.map((toe) => levelSpec(toe, {})), ...jobs.flatMap(({ factor, level }) => TOES.map((toe) => levelSpec(toe, factor.turn(level as never))))];
  const ports = await analysisPorts();
  const taken: Taken[] = [];
  await renderKept(specs, async (index, phantom) => {
    taken[index] = await analyse(phantom, ports);
    say(`${index + 1} of ${specs.length}`);
  }, 1);
  const at = (job: number): Taken[] => taken.slice(job * TOES.length, (job + 1) * TOES.length);
  const factors = FACTORS.map((factor) => ({
    ...named(factor),
    levels: factor.levels.map((level) => {
      const job = jobs.findIndex((one) => one.factor === factor && one.level === level);
      return levelResult(level, at(job + 1));
    }),
  }));
  return { methodVersion: METHOD_VERSION, toes: TOES, photos: specs.length, factors };
}
export type Sensitivity = Awaited<ReturnType<typeof runSensitivity>>;

const named = ({ name, unit, gate, baseLevel }: Factor) => ({ name, unit, gate, baseLevel });

async function analyse({ jpeg, truth }: Phantom, ports: Awaited<ReturnType<typeof analysisPorts>>): Promise<Taken> {
  const print = printCheck({ barReadsMm: truth.card.barReadsMm, bankCardFits: null });
  if ('problem' in print) throw new Error(print.problem);
  const result = await analysePhoto(jpeg, { geometry: OWN_CARD, print, context: { receivedAt: null, knownSha256: new Set() } }, ports);
  if (!result.analysed) throw new Error(`A phantom was not decoded: ${result.refusal.id}`);
  const measurement = measureAnyway(result.analysis);
  const refusedBy = result.analysis.reasons.map(({ gate }) => gate);
  const numbers = truth.measurements;
  if (!measurement || !numbers) return { refusedBy, outcomes: null };
  const outcome = (key: Studied): Outcome => compared(measurement.measurements[key], numbers[key]);
  return { refusedBy, outcomes: { erythemaArea: outcome('erythemaArea'), reach: outcome('reach'), grooveWidth: outcome('grooveWidth'), rawArea: outcome('rawArea') } };
}

function compared(measurement: Measurement, truth: number | null): Outcome {
  if (!('value' in measurement)) return { notMeasured: measurement.notMeasured };
  if (truth === null || truth === 0) return { notMeasured: 'noTruth' };
  return { error: measurement.value - truth, U: measurement.U, truth };
}

function levelResult(level: number | string, photos: readonly Taken[]): LevelResult {
  return {
    level,
    photos: photos.length,
    refused: photos.filter(({ refusedBy }) => refusedBy.length > 0).length,
    gates: [...new Set(photos.flatMap(({ refusedBy }) => refusedBy))].sort(),
    measurands: Object.fromEntries(STUDIED.map((key) => [key, measurandLevel(key, photos)])) as unknown as LevelResult['measurands'],
  };
}

function measurandLevel(key: Studied, photos: readonly Taken[]): MeasurandLevel {
  const all = photos.map(({ outcomes, refusedBy }): Outcome => outcomes?.[key] ?? { notMeasured: refusedBy[0] ?? 'gateFailed' });
  const found = all.filter((one) => 'error' in one);
  const scale = (one: { readonly truth: number }): number => (key.endsWith('Area') ? one.truth : 1);
  return {
    errors: found.map((one) => rounded(one.error / scale(one))),
    medianAbsError: found.length > 0 ? rounded(median(found, (one) => Math.abs(one.error) / scale(one)) as number) : null,
    medianU: found.length > 0 ? rounded(median(found, (one) => one.U / scale(one)) as number) : null,
    outsideU: found.filter((one) => Math.abs(one.error) > one.U).length,
    notMeasured: all.flatMap((one) => ('notMeasured' in one ? [one.notMeasured] : [])),
  };
}

const rounded = (value: number): number => Number(value.toFixed(4));
