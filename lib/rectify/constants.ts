/**
 * Limits of the rectify stage. Those marked "measurement page" are fixed by the project's measurement definition;
 * the others say where they come from.
 */

/** Fewer fiducials than this fix no pose that can be checked (measurement page: "any four found"). */
export const LEAST_FIDUCIALS = 4;
/** A fiducial whose corners lie farther than this from the common plane is left out: bent, covered or not ours. */
export const FIDUCIAL_OUTLIER_MM = 0.6;
/** Corners that agree this well hide no stray fiducial; photos of a flat card leave 0.01–0.04 mm (measured, ours). */
export const QUIET_RESIDUAL_MM = 0.05;
/** No pose is accepted whose corners disagree by more than this (root mean square): never a wrong pose. */
export const POSE_RESIDUAL_LIMIT_MM = 0.45;
/** The found fiducials' hull must cover this share of all fiducials' hull, else scale would be extrapolated. */
export const LEAST_HULL_SHARE = 0.4;
/** Prior for how far printing and thresholding move each edge of a square inward or outward (standard deviation). */
export const INSET_PRIOR_MM = 0.1;
/** Noise of one fine corner, for weighing it against the prior. */
export const CORNER_NOISE_PX = 0.15;

/** Median absolute deviation to standard deviation, for normal errors: 1 / Φ⁻¹(3/4). */
export const MAD_TO_SIGMA = 1.4826;

/** Measurement page: gates. */
export const TILT_LIMIT_DEG = 35;
export const RESOLUTION_LIMIT_PX_PER_MM = 6;
export const BLUR_LIMIT_MM = 0.35;

/** 35 mm-equivalent focal length of a phone's main camera where the file does not say: 24–28 mm (common practice). */
export const PRIOR_FOCAL_35_MM = 26;
export const PRIOR_FOCAL_RELATIVE_U = 0.15;
/** Relative standard uncertainty of a focal length read from the file (rounding, focus breathing; prior, ours). */
export const FILE_FOCAL_RELATIVE_U = 0.03;
/** Diagonal of the 35 mm frame, 36 × 24 mm (CIPA DCG-001 defines the equivalent over the diagonal). */
export const FRAME_35_DIAGONAL_MM = Math.hypot(36, 24);
/** Beyond this tilt the focal length can be read from the perspective itself. */
export const FOCAL_FROM_VIEW_TILT_DEG = 18;

/**
 * Resolution of the millimetre map. Outlines are found between its pixels, so a finer map gains nothing that a phone
 * photo (6–25 px/mm, blurred over 0.1–0.35 mm) holds, and costs time; DEVELOPERS.md, decision 3.
 */
export const MAP_PX_PER_MM = 8;
/** The map: 44 mm across, from 6 mm above the notch's apex to 50 mm below it. Nail, folds and first joint fit in. */
export const MAP_WIDTH_MM = 44;
export const MAP_ABOVE_APEX_MM = 6;
export const MAP_BELOW_APEX_MM = 50;
/** A code value from here on is taken as clipped: what was there is not known. */
export const CLIPPED_CODE = 254;
/** Where the middle of a nail lies below the notch's apex; resolution and distance are stated there. */
export const NAIL_BELOW_APEX_MM = 11;

/** A quick look is enough when it misses no more than so many fiducials: one may be under a thumb. */
export const QUICK_MAY_MISS = 1;
