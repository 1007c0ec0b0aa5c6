/** The numbers the printed card is built from. Millimetres unless a name says otherwise. */

/** ISO/IEC 7810:2019, size ID-1: the nominal width and height of a bank card. */
export const ID1_WIDTH_MM = 85.6;
export const ID1_HEIGHT_MM = 53.98;
/** ISO/IEC 7810:2019, ID-1: corner radius 2.88 to 3.48 mm; the middle of that range. */
export const ID1_CORNER_RADIUS_MM = 3.18;

/** Printed on the card and in its QR code; rises whenever anything on the card face moves. */
export const CARD_VERSION = 'FW1';

/** A 4 × 4 marker with its black border is 6 modules wide. Nine pixels a module at 6 px/mm. */
export const MARKER_MODULES = 6;
export const MARKER_MODULE_MM = 1.5;
export const FIDUCIAL_MM = MARKER_MODULES * MARKER_MODULE_MM;

/** ISO/IEC 18004: version 1 is 21 modules wide, with a quiet zone of 4 modules on every side. */
export const QR_MODULES = 21;
export const QR_QUIET_MODULES = 4;
/** As large as the place between marker, bar and notch allows: 3.6 px a module at 6 px/mm. */
export const QR_MODULE_MM = 0.6;

/** What a person lays a ruler on. */
export const BAR_MM = 50;

/**
 * Widths of the three cut lines for the toe. Big toes at the nail are about 22 to 33 mm broad (from memory, adult
 * anthropometry); a swollen toe needs the widest.
 */
export const NOTCH_WIDTHS_MM = { S: 26, M: 30, L: 34 } as const;
export type NotchSize = keyof typeof NOTCH_WIDTHS_MM;

/** The three cut lines are concentric: a half circle about this point on straight sides. */
export const NOTCH_CENTRE = { acrossMm: ID1_WIDTH_MM / 2, downMm: 35 };

/** sRGB code values of the inks. Markers and greys stay neutral; only text and guides have a tint. */
export type Srgb = readonly [number, number, number];
export const BLACK: Srgb = [0, 0, 0];
export const INK_BLUE: Srgb = [27, 42, 73];
export const FAINT_INK: Srgb = [168, 178, 194];
/** The one accent: the line colour of millimetre paper. */
export const GRID_INK: Srgb = [240, 205, 190];
