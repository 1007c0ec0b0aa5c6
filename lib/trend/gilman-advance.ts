export interface AreaWithPerimeter {
  readonly areaMm2: number;
  readonly perimeterMm: number;
}

/**
 * How far the edge of a wound has moved inward on average: area lost divided by the mean perimeter.
 *
 * @param before area, mm², and perimeter, mm
 * @param after the same, later
 * @returns millimetres; negative where the wound grew; zero where both perimeters are zero
 * For a long thin groove it understates the way the side walls went, because the perimeter includes the length: groove
 * width is reported beside it. Source: Gilman 1990, Wounds 2:95–8.
 * @example gilmanAdvance({ areaMm2: 36, perimeterMm: 30 }, { areaMm2: 24, perimeterMm: 28 }) // 0.413793
 */
export function gilmanAdvance(before: AreaWithPerimeter, after: AreaWithPerimeter): number {
  const perimeters = before.perimeterMm + after.perimeterMm;
  return perimeters === 0 ? 0 : (2 * (before.areaMm2 - after.areaMm2)) / perimeters;
}

/**
 * Perimeter of a groove taken as a rectangle of its area and its mean width, for where no outline was kept.
 *
 * @param areaMm2 ≥ 0
 * @param widthMm > 0
 * @throws RangeError where the width is not above zero
 * @example groovePerimeterForGilmanAdvance(36, 3) // 30
 */
export function groovePerimeterForGilmanAdvance(areaMm2: number, widthMm: number): number {
  if (!(widthMm > 0)) throw new RangeError(`groovePerimeterForGilmanAdvance: a width above 0 is needed, received ${widthMm}`);
  return 2 * (areaMm2 / widthMm + widthMm);
}
