/** Stands beside every result. */
export const CAUTION =
  'A measurement aid, not a diagnosis. It cannot see depth, heat, pus under the skin or bone; when in doubt a person has to look.';
