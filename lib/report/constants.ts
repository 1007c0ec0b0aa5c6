/** The look of what is drawn over a photo: ink, paper and pen widths, mm on the card. */
import type { Srgb } from '../card/constants';

export const INK: Srgb = [20, 32, 72];
export const PAPER: Srgb = [252, 251, 247];
export const ACCENT: Srgb = [176, 42, 96];
export const LINE_MM = 0.2;
/** A pale halo under the ink keeps a line readable on any skin. */
export const HALO_MM = 0.5;
export const LETTER_MM = 1.25;
