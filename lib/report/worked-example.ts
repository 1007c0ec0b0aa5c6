import type { CombinedBudget } from '../measure/combine-budget';
import { type Measurement, isMeasured } from '../result';
import { percentText, type PlainTable } from './plain-table';

export interface WorkedExample {
  readonly value: string;
  /** The sum written out. */
  readonly sentence: string;
  readonly table: PlainTable;
}

/** Contributions smaller than this share of the whole are left out. */
const SMALL = 0.001;

const TERM_WORDS: Readonly<Record<string, string>> = {
  boundaryCommon: 'the whole outline moved one way (threshold, light)',
  boundaryLocal: 'the outline wobbles along its way',
  threshold: 'where redness is taken to end',
  model: 'what the program’s own outlines leave over on phantoms',
  methodSpread: 'passes of the program differ',
  tracing: 'people who draw the same outline differ',
  printScale: 'scale of the print',
  homographyResidual: 'corners of the card that do not fit one plane',
  lensDistortion: 'the lens',
  nailHeight: 'height of the nail above or below the card',
  skinSlope: 'slope of the skin, seen by a phone that leans',
  toeHeight: 'how high the toe stands, seen by a phone that leans',
  toeSquareness: 'how flat it is on top',
  toeMiddle: 'where its middle lies',
  toeWidth: 'how wide it is',
  sampling: 'pixels of the map',
};

/**
 * One measured area with its error budget worked through: every contribution, the root of the sum of their squares, and
 * twice that.
 *
 * @param area a redness area, mm²
 * @param budget its contributions
 * @returns words and a table, largest contribution first; null where the photo gave no area
 * @example workedExample({ notMeasured: 'noRegionFound' }, undefined) // null
 */
export function workedExample(area: Measurement, budget: CombinedBudget | undefined): WorkedExample | null {
  if (!isMeasured(area) || !budget) return null;
  const terms = Object.entries(budget.terms).filter(([, u]) => Math.abs(u) > SMALL * budget.uCombined).sort((a, b) => Math.abs(b[1]) - Math.abs(a[1]));
  const squares = terms.map(([, u]) => `${Math.abs(u).toFixed(2)}²`).join(' + ');
  return {
    value: `${area.value.toFixed(1)} mm² ± ${area.U.toFixed(1)} mm² (k = 2)`,
    sentence: `u = √(${squares}) = ${area.u.toFixed(2)} mm²; U = 2 · u = ${area.U.toFixed(2)} mm².`,
    table: {
      caption: 'Contributions to the uncertainty of the redness area, one standard deviation each',
      columns: ['Where it comes from', 'u', 'Share of the variance'],
      rows: terms.map(([name, u]) => [TERM_WORDS[name] ?? name, `${Math.abs(u).toFixed(2)} mm²`, percentText((u / budget.uCombined) ** 2, 0)]),
    },
  };
}
