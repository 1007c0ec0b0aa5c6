import type { Measurand } from '../measure/measure-input';
import type { Measurement } from '../result';
import { gapReasonWords, trendNumberWords } from './trend-words';

const SAID: readonly (readonly [Measurand, string, string])[] = [
  ['reach', 'reach, as seen', 'mm'],
  ['erythemaArea', 'redness area', 'mm²'],
  ['rawArea', 'raw area', 'mm²'],
  ['grooveWidth', 'groove width', 'mm'],
];

/**
 * The numbers of one photo that people follow, each with its expanded uncertainty or why there is none.
 *
 * @param measurements of one photo
 * @example numberWords({ reach: { value: 4.2, u: 0.4, U: 0.8, unit: 'mm' } })[0] // 'reach, as seen 4.2 ± 0.8 mm'
 */
export function numberWords(measurements: Partial<Readonly<Record<Measurand, Measurement>>>): string[] {
  return SAID.flatMap(([key, name, unit]) => {
    const found = measurements[key];
    if (found === undefined) return [];
    return 'notMeasured' in found ? `${name}: none (${gapReasonWords(found.notMeasured)})` : `${name} ${trendNumberWords(found.value)} ± ${trendNumberWords(found.U)} ${unit}`;
  });
}
