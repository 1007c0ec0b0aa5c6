import { MEASURAND_UNIT, type Measurand } from '../measure/measure-input';
import { accuracyTables } from './accuracy-tables';
import { fairnessTable } from './fairness-table';
import { MEASURAND_WORDS } from './measurand-words';
import type { MethodFigures } from './method-figures';
import { outsideNotes, outsideTable } from './outside-table';
import type { PlainTable } from './plain-table';
import { sensitivityPlot, type SensitivityPlot } from './sensitivity-plot';
import { budgetBreaks, gateReasons, sensitivityTable } from './sensitivity-table';

const UNIT_WORDS: Readonly<Record<string, string>> = { mm2: 'mm²', '{EI}.mm2': 'EI·mm²', '{EI}': 'EI', '{deltaA}': 'Δa*' };

/** The method page without the worked example: all of it from the benches' own files. */
export interface MethodPage {
  readonly methodVersion: string;
  readonly measurands: readonly { readonly name: string; readonly unit: string; readonly meaning: string }[];
  readonly accuracy: readonly PlainTable[];
  readonly fairness: PlainTable;
  readonly unfair: readonly string[];
  readonly outside: PlainTable;
  readonly outsideNotes: readonly string[];
  readonly sensitivity: readonly { readonly name: string; readonly plots: readonly { readonly measurand: string; readonly plot: SensitivityPlot }[]; readonly table: PlainTable }[];
  readonly breaks: readonly string[];
  readonly gateReasons: readonly string[];
  /** Which run made which figures; says so where it was another version of the method. */
  readonly madeBy: readonly string[];
}

/**
 * Everything that the method page shows of the benches.
 *
 * @param figures the benches' files
 * @param methodVersion of the program as it stands
 * @example methodPage(figures, '0.2.0').madeBy[0] // 'Accuracy: 2026-11-25, seed 1, method 0.2.0.'
 */
export function methodPage({ accuracy, fairness, sensitivity, outside }: MethodFigures, methodVersion: string): MethodPage {
  const made = (name: string, by: { readonly madeOn: string; readonly methodVersion: string }, seed: number | null): string => {
    const older = by.methodVersion === methodVersion ? '' : ` These figures are of another version than the one at work (${methodVersion}).`;
    return `${name}: ${by.madeOn}${seed === null ? '' : `, seed ${seed}`}, method ${by.methodVersion}.${older}`;
  };
  return {
    methodVersion,
    measurands: (Object.keys(MEASURAND_UNIT) as Measurand[]).map((key) => ({ name: MEASURAND_WORDS[key][0], unit: UNIT_WORDS[MEASURAND_UNIT[key]] ?? MEASURAND_UNIT[key], meaning: MEASURAND_WORDS[key][1] })),
    accuracy: accuracyTables(accuracy),
    fairness: fairnessTable(fairness),
    unfair: fairness.unfair,
    outside: outsideTable(outside),
    outsideNotes: outsideNotes(outside),
    sensitivity: sensitivity.factors.map((factor) => ({
      name: factor.name,
      plots: [{ measurand: 'Redness area', plot: sensitivityPlot(factor, 'erythemaArea') }, { measurand: 'Reach, mm', plot: sensitivityPlot(factor, 'reach') }],
      table: sensitivityTable(factor),
    })),
    breaks: budgetBreaks(sensitivity.factors),
    gateReasons: gateReasons(sensitivity.factors),
    madeBy: [made('Accuracy', accuracy, accuracy.seed), made('Fairness', fairness, fairness.seed), made('Sensitivity', sensitivity, null), made('Pictures of others', outside, null)],
  };
}
