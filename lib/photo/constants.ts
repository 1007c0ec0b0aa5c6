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

/** Largest file that is looked at. 64 MP as an uncompressed 24 bit PNG is 192 MB; phone files are 1–30 MB. */
export const MAX_FILE_BYTES = 200_000_000;

/** A capture time further back than this cannot belong to the course of healing (own choice: a year and a month). */
export const MAX_CAPTURE_AGE_DAYS = 400;

/**
 * A camera's clock without a zone may read up to 14 h ahead of UTC (Kiribati, UTC+14, IANA tz) and up to 12 h behind
 * (UTC−12); 26 h is the widest gap between two wall clocks on Earth, so nothing honest lies beyond it.
 */
export const ZONE_SLACK_HOURS = 26;

/** The same rule where the file states its own offset: a phone's clock may still be a little wrong (own choice). */
export const CLOCK_SLACK_HOURS = 1;
