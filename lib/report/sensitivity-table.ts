import type { SensitivityFigures } from './method-figures';
import { millimetreText, percentText, type PlainTable } from './plain-table';

type Factor = SensitivityFigures['factors'][number];

const COLUMNS: readonly (readonly [key: string, words: string])[] = [['erythemaArea', 'Redness area'], ['reach', 'Reach'], ['grooveWidth', 'Groove width'], ['rawArea', 'Raw area']];

/**
 * One factor of the sensitivity study: median error and, in brackets, the median stated uncertainty.
 *
 * @param factor what was turned, with its levels
 * @example sensitivityTable({ name: 'tilt', unit: '°', gate: null, baseLevel: 0, levels: [] }).columns[0] // 'tilt, °'
 */
export function sensitivityTable({ name, unit, levels }: Factor): PlainTable {
  return {
    caption: `Error against ${name}: median, and median stated uncertainty (k = 2)`,
    columns: [unit === '' ? name : `${name}, ${unit}`, 'Refused', 'Gate', ...COLUMNS.map(([, words]) => words)],
    rows: levels.map(({ level, refused, photos, gates, measurands }) => [
      String(level),
      `${refused} of ${photos}`,
      gates.length > 0 ? gates.join(', ') : '–',
      ...COLUMNS.map(([key]) => {
        const { medianAbsError, medianU } = measurands[key];
        const text = key.endsWith('Area') ? (share: number | null) => percentText(share, 0) : millimetreText;
        return `${text(medianAbsError)} (${text(medianU)})`;
      }),
    ]),
  };
}

/**
 * Where the budget breaks: levels at which more than one photo in three lay outside its stated uncertainty although no
 * gate refused them all, and the levels that a gate takes away.
 *
 * @param factors of the study
 * @returns sentences; empty where nothing broke
 * @example budgetBreaks([]) // []
 */
export function budgetBreaks(factors: readonly Factor[]): string[] {
  return factors.flatMap(({ name, unit, levels }) =>
    levels.flatMap(({ level, refused, photos, gates, measurands }) =>
      COLUMNS.flatMap(([key, words]) => {
        const { errors, outsideU } = measurands[key];
        if (errors.length === 0 || 3 * outsideU <= errors.length) return [];
        const gone = refused === photos ? `, and the gate “${gates.join(', ')}” refuses such photos` : ', and no gate refuses all such photos';
        return [`${words} at ${name} ${level}${unit ? ` ${unit}` : ''}: ${outsideU} of ${errors.length} outside the stated uncertainty${gone}.`];
      }),
    ),
  );
}
