import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { combineBudget } from '../../../lib/measure/combine-budget';
import { METHOD_VERSION } from '../../../lib/pipeline/method-version';
import type { MethodFigures } from '../../../lib/report/method-figures';
import { methodPage } from '../../../lib/report/method-page';
import { sensitivityPlot } from '../../../lib/report/sensitivity-plot';
import { budgetBreaks, gateReasons } from '../../../lib/report/sensitivity-table';
import { workedExample } from '../../../lib/report/worked-example';
import { measured } from '../../../lib/result';

const FOLDER = path.resolve(import.meta.dirname, '..', '..', '..', 'lib', 'report', 'figures');
const figures = Object.fromEntries(readdirSync(FOLDER).map((name) => [name.replace('.json', ''), JSON.parse(readFileSync(path.join(FOLDER, name), 'utf8')) as unknown])) as unknown as MethodFigures;
const page = methodPage(figures, METHOD_VERSION);

describe('the method page', () => {
  it('names day, seed and method version of every run it shows', () => {
    expect(page.madeBy).toHaveLength(4);
    for (const line of page.madeBy) expect(line).toMatch(/^[A-Z][a-z ]+: \d{4}-\d\d-\d\d(, seed \d+)?, method \d+\.\d+\.\d+\./);
  });

  it('says so where figures are of another version than the one at work', () => {
    for (const line of methodPage(figures, '99.0.0').madeBy) expect(line).toContain('of another version than the one at work (99.0.0)');
    const present = Object.values(figures).filter(({ methodVersion }: { methodVersion: string }) => methodVersion === METHOD_VERSION).length;
    expect(page.madeBy.filter((line) => !line.includes('another version'))).toHaveLength(present);
  });

  it('shows what stands in the files', () => {
    const [overall, byClass] = page.accuracy;
    expect(overall.caption).toContain(`${figures.accuracy.photos} photos, seed ${figures.accuracy.seed}`);
    const median = overall.rows.find(([what]) => what === 'redness area, median error');
    expect(median?.[1]).toBe(`${(100 * (figures.accuracy.erythemaArea.medianRelError ?? NaN)).toFixed(1)} %`);
    expect(byClass.rows.map(([name]) => name)).toEqual(['very light', 'light', 'intermediate', 'tan', 'brown', 'dark']);
    expect(page.fairness.rows).toHaveLength(6);
    expect(page.outside.rows.map(([, ...counts]) => Number(counts[0]) - Number(counts[1]) - Number(counts[2]) - Number(counts[3]))).toEqual(page.outside.rows.map(() => 0));
  });

  it('has a plot and a table for everything that was turned', () => {
    expect(page.sensitivity.map(({ name }) => name)).toEqual(['tilt', 'height of the nail against the card', 'distance', 'defocus', 'light', 'exposure', 'skin class', 'tone curve', 'print scale']);
    for (const { plots, table } of page.sensitivity) {
      expect(plots).toHaveLength(2);
      expect(table.rows.length).toBeGreaterThan(3);
    }
  });

  it('never reassures', () => {
    expect(JSON.stringify(page)).not.toMatch(/\bnormal\b|\bfine\b|all well|healing well/i);
  });
});

const level = (at: number, errors: readonly number[], medianU: number | null, refused = 0) => {
  const one = { errors, medianAbsError: null, medianU, outsideU: errors.filter((error) => Math.abs(error) > (medianU ?? 0)).length, notMeasured: [] };
  return { level: at, photos: 3, refused, gates: refused > 0 ? ['tilt'] : [], measurands: { erythemaArea: one, reach: one, grooveWidth: one, rawArea: one } };
};

describe('a plot of errors', () => {
  const plot = sensitivityPlot({ name: 'tilt', unit: '°', gate: { id: 'tilt', limit: 35 }, baseLevel: 10, levels: [level(10, [0.5, -0.5], 0.5), level(30, [1], 1), level(40, [2], 1, 3)] }, 'reach');

  it('has every photo on it, upright, and open where it was refused', () => {
    expect(plot.dots.map(({ refused }) => refused)).toEqual([false, false, false, true]);
    expect(plot.dots[0].downMm).toBe(plot.dots[1].downMm);
    // Axis from 0 to 2 mm over 30 mm: half a millimetre lies 7.5 mm above the base.
    expect(plot.baseMm - plot.dots[0].downMm).toBeCloseTo(7.5, 9);
    expect(plot.valueTicks.map(({ text }) => text)).toEqual(['0.0', '0.5', '1.0', '1.5', '2.0']);
  });

  it('has its gate between the levels that it lies between', () => {
    const [, second, third] = plot.levelTicks.map(({ atMm }) => atMm);
    expect(plot.gateMm).toBeCloseTo((second + third) / 2, 9);
  });
});

describe('where the budget breaks', () => {
  it('is said for a level with more than one in three outside, and whether a gate takes it away', () => {
    const factor = { name: 'tilt', unit: '°', gate: null, baseLevel: 10 };
    expect(budgetBreaks([{ ...factor, levels: [level(10, [0.1, 0.2, 2], 1)] }])).toEqual([]);
    const said = budgetBreaks([{ ...factor, levels: [level(20, [2, 2, 0.1], 1), level(40, [2, 2, 2], 1, 3)] }]);
    expect(said[0]).toBe('Redness area at tilt 20 °: 2 of 3 outside the stated uncertainty, and no gate refuses all such photos.');
    expect(said[4]).toBe('Redness area at tilt 40 °: 3 of 3 outside the stated uncertainty, and the gate “tilt” refuses such photos.');
  });
});

describe('where a gate has to stand', () => {
  it('is where an area is uncertain by more than half of itself', () => {
    const factor = { name: 'tilt', unit: '°', gate: null, baseLevel: 10 };
    expect(gateReasons([{ ...factor, levels: [level(10, [0.1], 0.5), level(20, [0.1], 0.51), level(40, [0.1], 0.6, 3), level(50, [], null, 3)] }])).toEqual([
      'At tilt 20 ° the stated uncertainty is 51 % of the redness area: no gate refuses all such photos.',
      'At tilt 40 ° the stated uncertainty is 60 % of the redness area: the gate “tilt” refuses such photos.',
    ]);
  });
});

describe('the worked example', () => {
  it('writes the sum out: 3 and 4 make 5, and twice that', () => {
    const budget = combineBudget([{ name: 'model', u: 3 }, { name: 'skinSlope', u: 4 }]);
    const worked = workedExample(measured(40, 5, 'mm2'), budget);
    expect(worked?.value).toBe('40.0 mm² ± 10.0 mm² (k = 2)');
    expect(worked?.sentence).toBe('u = √(4.00² + 3.00²) = 5.00 mm²; U = 2 · u = 10.00 mm².');
    expect(worked?.table.rows).toEqual([
      ['slope of the skin, seen by a phone that leans', '4.00 mm²', '64 %'],
      ['what the program’s own outlines leave over on phantoms', '3.00 mm²', '36 %'],
    ]);
  });

  it('is not made up where the photo gave no area', () => {
    expect(workedExample({ notMeasured: 'contrastTooLow' }, undefined)).toBeNull();
  });
});
