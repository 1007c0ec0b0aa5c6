import { CENTRE_LINE_U_MM, SECTION_U, USUAL_SECTION } from './constants';
import type { BudgetTerm } from './combine-budget';
import type { MeasureInput, Outlines } from './measure-input';
import type { Dimension } from './scale-terms';
import { skinSlopeTerm } from './skin-slope-term';
import { straightenWith } from './straighten-outlines';
import type { ToeRelief } from './toe-relief';
import type { ToeSection } from './toe-section';

/** The same photo over a toe of a slightly other shape: one standard uncertainty of one of its properties away. */
export interface BodyVariant {
  readonly name: 'toeHeight' | 'toeSquareness' | 'toeMiddle' | 'toeWidth';
  readonly relief: ToeRelief;
  readonly outlines: Outlines;
}

const HIGHER: ToeSection = { ...USUAL_SECTION, flatness: USUAL_SECTION.flatness + SECTION_U.flatness };
const SQUARER: ToeSection = { ...USUAL_SECTION, squareness: USUAL_SECTION.squareness + SECTION_U.squareness };

/**
 * What is not known of a toe's body, each property moved by its standard uncertainty.
 *
 * @param seen outlines as the camera shows them
 * @param relief the toe as it is taken to be
 * @param isStraightened false where the lens's place is not known and outlines stay as seen
 * @returns one variant for each property; how much a number changes with it is its term of the budget (JCGM 100:2008, 5.1.3, note 2)
 * @example bodyVariants(seen, relief, true).map(({ name }) => name) // ['toeHeight', 'toeSquareness', 'toeMiddle', 'toeWidth']
 */
export function bodyVariants(seen: Outlines, relief: ToeRelief, isStraightened: boolean): BodyVariant[] {
  const { cylinder } = relief;
  const wider = cylinder.halfWidthsMm.map((halfWidth) => halfWidth + (seen.toe?.boundaryUMm ?? 0));
  const reliefs: readonly (readonly [BodyVariant['name'], ToeRelief])[] = [
    ['toeHeight', { ...relief, shape: HIGHER }],
    ['toeSquareness', { ...relief, shape: SQUARER }],
    ['toeMiddle', { ...relief, cylinder: { ...cylinder, centreMm: cylinder.centreMm + CENTRE_LINE_U_MM } }],
    ['toeWidth', { ...relief, cylinder: { ...cylinder, halfWidthsMm: wider } }],
  ];
  // Only what is measured again.
  const needed = { ...seen, nailPlate: null, cutEdge: null, marginLateral: null };
  return reliefs.map(([name, other]) => ({ name, relief: other, outlines: isStraightened ? straightenWith(other, needed) : seen }));
}

/**
 * What the toe's body leaves open of one projected length or area.
 *
 * @param input of the whole stage
 * @param value as measured
 * @param dimension of it
 * @param measure the same number over another body; null counts as unchanged
 * @returns a term for each property of the body; without a lens or a body one for a lean over any slope
 * @example bodyTerms({ ...input, bodyVariants: [] }, 50, 'area', () => 50) // []
 */
export function bodyTerms(input: MeasureInput, value: number, dimension: Dimension, measure: (variant: BodyVariant) => number | null): BudgetTerm[] {
  if (!input.bodyVariants || !input.lens) return [skinSlopeTerm(input.scale, value, dimension)];
  return variantTerms(input, value, measure);
}

/**
 * The number taken again over toes of slightly other shapes, however the photo was taken: what an unrolled length or area is doubted by.
 * @example variantTerms({ ...input, bodyVariants: [] }, 50, () => 50) // []
 */
export function variantTerms({ bodyVariants: variants = [] }: MeasureInput, value: number, measure: (variant: BodyVariant) => number | null): BudgetTerm[] {
  return variants.map((variant) => ({ name: variant.name, u: Math.abs((measure(variant) ?? value) - value) }));
}
