import { DECIMALS } from './constants';
import type { SeenNumber } from './finding';
import type { VisitValue } from './visit-value';

/**
 * A number for a sentence, with one decimal; a whole one without.
 * @example wordsForNumber(3.14) // '3.1'
 */
export const wordsForNumber = (value: number): string => String(Number(value.toFixed(DECIMALS)));

/**
 * Hours for a sentence: rounded, as days from two days on.
 * @example wordsForHours(41.2) // '41 h'
 */
export const wordsForHours = (hours: number): string => `${Math.round(hours)} h`;

/**
 * A measured number as evidence.
 *
 * @param name what it is called in the evidence
 * @param found value with its uncertainty
 * @param unit UCUM code
 * @example seenWords('reach', { value: 4.2, u: 0.5 }, 'mm') // { name: 'reach', value: 4.2, unit: 'mm', u: 0.5 }
 */
export const seenWords = (name: string, { value, u }: Pick<VisitValue, 'value' | 'u'>, unit: string): SeenNumber => ({ name, value, unit, u });
