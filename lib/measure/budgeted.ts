import { measured, notMeasured } from '../result';
import type { Measurement, NotMeasuredReason } from '../result';
import { combineBudget } from './combine-budget';
import type { BudgetTerm, CombinedBudget } from './combine-budget';
import { MEASURAND_UNIT } from './measure-input';
import type { MeasureInput, Measurand } from './measure-input';

/** A measurement together with where its uncertainty comes from; a refusal has no budget. */
export interface Budgeted {
  readonly measurement: Measurement;
  readonly budget: CombinedBudget | null;
}

/**
 * A reason instead of a value.
 *
 * @param reason from the closed list
 * @returns the refusal, without a budget
 * @example refused('noRegionFound') // { measurement: { notMeasured: 'noRegionFound' }, budget: null }
 */
export const refused = (reason: NotMeasuredReason): Budgeted => ({ measurement: notMeasured(reason), budget: null });

/**
 * Puts a value and its terms together; the scatter between passes of the method, where known, joins as one more term.
 *
 * @param input of the whole stage, for the scatter between passes
 * @param key which measurand, which fixes the unit
 * @param value in that unit
 * @param terms independent influences
 * @returns measurement and budget
 * @example budgeted(input, 'reach', 5, [{ name: 'scale', u: 0.3 }, { name: 'margin', u: 0.4 }]).measurement // { value: 5, u: 0.5, U: 1, unit: 'mm' }
 */
export function budgeted(input: MeasureInput, key: Measurand, value: number, terms: readonly BudgetTerm[]): Budgeted {
  const spread = input.passSpread?.[key];
  const scatter: BudgetTerm[] =
    spread && spread.passes > 1 ? [{ name: 'methodSpread', u: spread.sd, dof: spread.passes - 1 }] : [];
  const others = { model: input.modelError?.[key], tracing: input.tracing?.[key] };
  const left = Object.entries(others).flatMap(([name, error]) => (error ? [{ name, u: Math.hypot(error.relative * value, error.absolute) }] : []));
  const budget = combineBudget([...terms, ...scatter, ...left]);
  return { measurement: measured(value, budget.uCombined, MEASURAND_UNIT[key]), budget };
}
