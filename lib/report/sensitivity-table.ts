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

/** A number that may be off by more than half of itself says little. Ours: the limit of tilt follows from it. */
const MOST_UNCERTAIN_SHARE = 0.5;

/**
 * Where a gate has to stand: levels at which the redness area is measured, and so uncertainly that it says little.
 *
 * @param factors of the study
 * @returns sentences; empty where every level says enough
 * @example gateReasons([]) // []
 */
export function gateReasons(factors: readonly Factor[]): string[] {
  return factors.flatMap(({ name, unit, levels }) =>
    levels.flatMap(({ level, refused, photos, gates, measurands: { erythemaArea } }) => {
      if (erythemaArea.medianU === null || erythemaArea.medianU <= MOST_UNCERTAIN_SHARE) return [];
      const gone = refused === photos ? `the gate “${gates.join(', ')}” refuses such photos` : 'no gate refuses all such photos';
      return [`At ${name} ${level}${unit ? ` ${unit}` : ''} the stated uncertainty is ${percentText(erythemaArea.medianU, 0)} of the redness area: ${gone}.`];
    }),
  );
}
