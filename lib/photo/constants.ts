/** Limits of the first stage, each with its source or its reason. */

/**
 * 64 million pixels: every phone's ordinary photo (12–50 MP) fits; 200 MP modes and bombs do not. As RGB this is
 * 192 MB, which a small server still holds once (own choice, reasoned from memory).
 */
export const MAX_PIXELS = 64_000_000;

/**
 * Shortest permitted long edge. A card 85.6 mm wide (ISO/IEC 7810 ID-1) that filled such a picture would be drawn at
 * 3.7 px/mm, below anything the resolution gate can pass: such a file is an icon or a thumbnail.
 */
export const MIN_LONG_EDGE_PX = 320;

/** Largest file that is looked at. A 48 MP photo saved as PNG is about 90 MB; what phones send is 1–30 MB. */
export const MAX_FILE_BYTES = 100_000_000;

/** Chunks or boxes in one file. A PNG of 90 MB in chunks of 8 kB has 12 000; a file of nothing but headers, millions. */
export const MAX_FILE_PARTS = 100_000;

/** A capture time further back than this cannot belong to the course of healing (own choice: a year and a month). */
export const MAX_CAPTURE_AGE_DAYS = 400;

/**
 * A camera's clock without a zone may read up to 14 h ahead of UTC (Kiribati, UTC+14, IANA tz) and up to 12 h behind
 * (UTC−12); 26 h is the widest gap between two wall clocks on Earth, so nothing honest lies beyond it.
 */
export const ZONE_SLACK_HOURS = 26;

/**
 * Grain is looked for in squares of 16 × 16 pixels on a grid of 16: with 4:2:0 colour that is one coded unit of a JPEG
 * (ITU-T T.81), so the ringing of an edge stays in the square of that edge.
 */
export const GRAIN_SQUARE_PX = 16;

/** Squares along each side: 24 × 24 of them give a share to within about 2 % (binomial), and cost milliseconds. */
export const GRAIN_SQUARES_ALONG = 24;

/** Code values. Grain with a standard deviation of 8 still stays within ±3 of that; more is an edge, not grain. */
export const EDGE_RANGE = 48;

/** Code values. Rounding to whole codes leaves at most 0.5 beside a plane; half as much again allows for curvature. */
export const PLANE_RESIDUAL = 0.75;

/**
 * Share of plain squares from which on a picture was drawn, not taken: a drawing with filled shapes has nearly nothing
 * else, a camera leaves grain almost everywhere that is not clipped (own choice, with a wide gap on both sides).
 */
export const MAX_PLAIN_SHARE = 0.8;

/** With less grain than this anywhere, clipped white and black are no excuse any more: a blank page, a screenshot. */
export const MIN_GRAIN_SHARE = 0.02;
