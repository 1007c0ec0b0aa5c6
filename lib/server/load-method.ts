import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { measureSample } from '../edges/sample/measure-sample';
import type { AnalysisJson } from '../pipeline/analysis-json';
import { METHOD_VERSION } from '../pipeline/method-version';
import accuracy from '../report/figures/accuracy.json';
import fairness from '../report/figures/fairness.json';
import outside from '../report/figures/outside.json';
import sensitivity from '../report/figures/sensitivity.json';
import type { MethodFigures } from '../report/method-figures';
import { methodPage, type MethodPage } from '../report/method-page';
import { workedExample, type WorkedExample } from '../report/worked-example';
import { type Answer, refusedBy } from './answer';

export interface ShownMethod extends MethodPage {
  /** Worked out now, on a sample photo; null where that could not be done. */
  readonly example: (WorkedExample & { readonly photo: string; readonly trueAreaMm2: number; readonly tiltDeg: number | null; readonly distanceMm: number | null }) | null;
}

const FIGURES = { accuracy, fairness, sensitivity, outside } as unknown as MethodFigures;

/** How the numbers are made and how well they hold: open to everybody. */
export async function loadMethod(actor: Actor): Promise<{ readonly method: ShownMethod } | { readonly refused: Answer }> {
  const may = guard(actor, 'method.read', null);
  if (!may.allowed) return { refused: refusedBy(may) };
  return { method: { ...methodPage(FIGURES, METHOD_VERSION), example: await example() } };
}

async function example(): Promise<ShownMethod['example']> {
  const sample = await measureSample();
  if (sample === null) return null;
  const { measurements, budget, card } = JSON.parse(sample.json) as AnalysisJson;
  const worked = workedExample(measurements.erythemaArea, budget.erythemaArea);
  return worked && { ...worked, photo: sample.photo, trueAreaMm2: sample.trueAreaMm2, tiltDeg: card?.tiltDeg ?? null, distanceMm: card?.distanceMm ?? null };
}
