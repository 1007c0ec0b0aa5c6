/**
 * Units that the compiler knows. A brand is minted here and nowhere else (a test looks), so a bare number can never
 * slip into a place that expects millimetres.
 */
declare const unitOf: unique symbol;
type Branded<Unit extends string> = number & { readonly [unitOf]: Unit };

export type Px = Branded<'Px'>;
export type Mm = Branded<'Mm'>;
export type Mm2 = Branded<'Mm2'>;
export type DeltaE = Branded<'DeltaE'>;
export type Days = Branded<'Days'>;

function finite(value: number, unit: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${unit}: a finite number is needed, received ${value}`);
  return value;
}

/**
 * Pixels of one stated picture.
 * @example px(3) // 3
 */
export const px = (value: number): Px => finite(value, 'px') as Px;
/**
 * Millimetres in the plane of the calibration card.
 * @example mm(12.5) // 12.5
 */
export const mm = (value: number): Mm => finite(value, 'mm') as Mm;
/**
 * Square millimetres in the plane of the calibration card.
 * @example mm2(40) // 40
 */
export const mm2 = (value: number): Mm2 => finite(value, 'mm2') as Mm2;
/**
 * A colour difference; the function that made it names its formula.
 * @example deltaE(2.04) // 2.04
 */
export const deltaE = (value: number): DeltaE => finite(value, 'deltaE') as DeltaE;
/**
 * Days since the procedure; never epoch milliseconds.
 * @example days(4.5) // 4.5
 */
export const days = (value: number): Days => finite(value, 'days') as Days;

/** A point in a picture: the centre of the top left pixel is { row: 0, column: 0 }. */
export interface PointPx {
  readonly row: number;
  readonly column: number;
}

/** A point in the card's own frame: origin at the top left corner of the card, across to the right, down the page. */
export interface PointMm {
  readonly acrossMm: number;
  readonly downMm: number;
}

/** A closed outline in the card's frame. The last point is joined to the first and not repeated. */
export type RingMm = readonly PointMm[];
/** An open line in the card's frame. */
export type LineMm = readonly PointMm[];
