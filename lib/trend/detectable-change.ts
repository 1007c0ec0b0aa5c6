import { smallestDetectableChange } from '../measure/smallest-detectable-change';
import { type SeriesPoint, seriesUncertainty } from './series';

type Value = Pick<SeriesPoint, 'value' | 'u'>;

export interface Change {
  readonly difference: number;
  /** 1.96 · √(u₁² + u₂²), with u not below its floor. */
  readonly smallestDetectable: number;
  /** Is the difference, up or down, at least that large? Whether it matters is another question. */
  readonly seen: boolean;
}

/**
 * How far a value stands from an earlier one, and the least difference that could be told from chance.
 *
 * @param earlier value with standard uncertainty
 * @param later value with standard uncertainty, same unit
 * @param unit 'mm', or the unit of an area or load
 * @example detectableChange({ value: 5, u: 0.3 }, { value: 8, u: 0.3 }, 'mm').difference // 3
 */
export function detectableChange(earlier: Value, later: Value, unit: string): Change {
  const difference = later.value - earlier.value;
  const smallestDetectable = smallestDetectableChange(seriesUncertainty(earlier, unit), seriesUncertainty(later, unit));
  return { difference, smallestDetectable, seen: Math.abs(difference) >= smallestDetectable };
}
