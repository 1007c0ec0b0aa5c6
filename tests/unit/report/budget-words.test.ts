import { expect, it } from 'vitest';
import { combineBudget } from '../../../lib/measure/combine-budget';
import { budgetWords } from '../../../lib/report/budget-words';

it('says where an uncertainty comes from by shares of the variance, largest first, and what belongs together together', () => {
  const budget = combineBudget([{ name: 'tracing', u: 3 }, { name: 'boundaryCommon', u: 3 }, { name: 'boundaryLocal', u: Math.sqrt(7) }, { name: 'sampling', u: 0.1 }]);
  expect(budgetWords(budget)).toBe('where the line lies 64 %, people who draw the same outline differ 36 %');
});

it('puts many small influences together', () => {
  const budget = combineBudget([{ name: 'model', u: 10 }, { name: 'printScale', u: 1.5 }, { name: 'lensDistortion', u: 1.5 }]);
  expect(budgetWords(budget)).toBe('what the program’s own outlines leave over 96 %, the rest 4 %');
});
