/**
 * What a measurement is: a value with its unit and its uncertainty, or a reason why there is none. There is no third
 * thing, and "nothing found" is never zero.
 */

/** Codes of the Unified Code for Units of Measure (UCUM) that this project uses. `[EI]` is ours: erythema index. */
export type UnitCode = 'mm' | 'mm2' | 'deg' | '1' | '%' | '{EI}' | '{EI}.mm2' | '{deltaA}';

export interface Measured {
  readonly value: number;
  /** Standard uncertainty (JCGM 100), in `unit`. */
  readonly u: number;
  /** Expanded uncertainty, k = 2, in `unit`. */
  readonly U: number;
  readonly unit: UnitCode;
}

export interface NotMeasured {
  readonly notMeasured: NotMeasuredReason;
}

export type Measurement = Measured | NotMeasured;

/** Why one measurand has no value although the photo itself could be used. Sentences: `photo/reasons.ts`. */
export type NotMeasuredReason =
  | 'gateFailed'
  | 'noRegionFound'
  | 'contrastTooLow'
  | 'evidenceTooWeak'
  | 'foldHidden'
  | 'plateNotFound'
  | 'marginNotFound'
  | 'toeNotFound'
  | 'outOfView'
  | 'toeShapeUnknown';

/**
 * Is there a value?
 * @example isMeasured({ notMeasured: 'noRegionFound' }) // false
 */
export function isMeasured(measurement: Measurement): measurement is Measured {
  return 'value' in measurement;
}

/**
 * A value with its standard uncertainty; k = 2 is applied here only.
 *
 * @param value finite, in `unit`
 * @param u standard uncertainty, ≥ 0, in `unit`
 * @param unit UCUM code
 * @throws RangeError where value or u is not finite, or u is negative
 * @example measured(10, 0.5, 'mm') // { value: 10, u: 0.5, U: 1, unit: 'mm' }
 */
export function measured(value: number, u: number, unit: UnitCode): Measured {
  if (!Number.isFinite(value) || !(u >= 0) || !Number.isFinite(u)) {
    throw new RangeError(`measured: value and u must be finite and u not negative, received ${value} and ${u}`);
  }
  return { value, u, U: 2 * u, unit };
}

/**
 * A reason instead of a value.
 * @example notMeasured('foldHidden') // { notMeasured: 'foldHidden' }
 */
export const notMeasured = (reason: NotMeasuredReason): NotMeasured => ({ notMeasured: reason });
