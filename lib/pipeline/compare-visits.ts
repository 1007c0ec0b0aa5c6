import type { Measurand } from '../measure/measure-input';
import { smallestDetectableChange } from '../measure/smallest-detectable-change';
import { isMeasured, type UnitCode } from '../result';
import type { AnalysisJson } from './analysis-json';

/** How one number differs from an earlier visit's, and the least difference that could be told from chance. */
export interface VisitChange {
  readonly photo: string;
  readonly measurand: Measurand;
  readonly difference: number;
  readonly smallestDetectable: number;
  readonly unit: UnitCode;
}

const COMPARED: readonly Measurand[] = ['erythemaArea', 'reach', 'grooveWidth', 'rawArea'];

/**
 * Differences to an earlier visit of the same toe, for every number that both have.
 *
 * @param now this visit
 * @param earlier an earlier visit
 * @example compareVisits(now, now)[0].difference // 0
 */
export function compareVisits(now: AnalysisJson, earlier: AnalysisJson): VisitChange[] {
  return COMPARED.flatMap((measurand) => {
    const a = now.measurements[measurand];
    const b = earlier.measurements[measurand];
    if (!isMeasured(a) || !isMeasured(b)) return [];
    return [
      {
        photo: earlier.photo,
        measurand,
        difference: a.value - b.value,
        smallestDetectable: smallestDetectableChange(a.u, b.u),
        unit: a.unit,
      },
    ];
  });
}
