/**
 * Every number of the measure stage that is not a definition. "Prior, ours" marks a judgement of this project
 * (type B evaluation, JCGM 100:2008, 4.3): what was known of home photos before any was taken, stated so that it can
 * be argued with. None was fitted to pictures.
 */

import type { ToeSection } from './toe-section';

// --- Definitions: part of what the numbers mean, not estimates --------------------------------------------------

export const RADIANS_PER_DEGREE = Math.PI / 180;
/** Spacing of the edge points that distances are taken from. A tenth of the reach that anyone could act on. */
export const EDGE_SPACING_MM = 0.1;
/** The same where a number is only taken again to see how much a doubt moves it. */
export const VARIANT_SPACING_MM = 0.3;
/** Edge points this close to the margin are where the region leans on the fold, not where it ends. Definition of reachP95. */
export const NEAR_MARGIN_MM = 0.25;
export const REACH_PERCENTILE = 0.95;
/** How far past the region's edge the redness load is gathered: about half of a wide (4 mm) 10–90 % edge. Prior, ours. */
export const LOAD_RIM_MM = 1.5;
/** Coverage factor of the smallest detectable change: 97.5 % point of the normal distribution. */
export const NORMAL_975 = 1.96;

// --- Scale: errors that stretch everything alike, linear and relative ---------------------------------------------

/** Distance from the nail to the fiducials around it: half of an ID-1 card's mean side. A residual of e mm there
 * stretches the middle by about e divided by this. Geometry, ISO/IEC 7810. */
export const FIDUCIAL_LEVER_MM = 35;
/** Height of the nail and its folds above or below the card, which is asked to lie level with the nail. Prior, ours:
 * a folded sheet on a toe ends within 3 mm in 95 of 100 tries. */
export const NAIL_HEIGHT_U_MM = 1.5;
/** Where no focal length is known: the advice to the patient says about 25 cm; half or twice that is rare. Prior, ours. */
export const DEFAULT_DISTANCE_MM = 250;
export const DEFAULT_DISTANCE_RELATIVE_U = 0.3;
/** Local stretch that lens distortion leaves after the homography: 3·k1·r² with k1 = 0.02 and r = 0.2 (half of the
 * card's diagonal at 25 cm) is 0.24 %. Prior, ours. */
export const LENS_RELATIVE_U = 0.0024;

// --- Relief: skin that is not parallel to the card, seen by a camera that leans ------------------------------------

/** Mean slope of the skin beside a nail against the card, 1 standard deviation in each of two directions. Prior, ours:
 * on a toe of 10 mm radius the fold lies 4–6 mm off the top, where the skin falls by 24–37 degrees across, but the
 * region spans top and side (25 degrees); along the toe it rises or falls by 8. Root mean square of the two: 18. */
export const SKIN_SLOPE_U_DEG = 18;
/** A lean in a random direction acts along a fixed one by the cosine between: root mean square 1/√2. */
export const RANDOM_AZIMUTH_RMS = Math.SQRT1_2;
/** The plate's cut edge stands above or below the fold by about this. Prior, ours: plate 0.5–1 mm thick, fold raised. */
export const GROOVE_STEP_U_MM = 1;

// --- Outlines ------------------------------------------------------------------------------------------------------

/** Share of an outline's variance that moves the whole edge one way (threshold, light) instead of wobbling along it.
 * Prior, ours: the two halves are rarely told apart, so they are taken as equal. */
export const BOUNDARY_COMMON_SHARE = 0.5;
/** Integral scale of the wobble along an edge: places farther apart err independently. Prior, ours: redness fades over
 * 1–4 mm, and what blurs the edge across also ties it together along. */
export const BOUNDARY_CORRELATION_MM = 2;
/** Spacing at which a perimeter is taken for the budget: half of the wobble's scale. On a circle of 3 mm radius the
 * chords are 0.5 % short. */
export const PERIMETER_SPACING_MM = 1;
/** Places less than this many standard deviations of the wobble below a peak could as well have been the peak. */
export const CONTENDER_SPAN = 2;
/** Mean and variance of the largest of n independent standard normal values, n = 1 … 10. Harter 1961, Biometrika
 * 48:151–65 (means), and Sarhan and Greenberg 1956 (variances); the values from memory, checked by simulation in the tests. */
export const LARGEST_MEAN = [0, 0.56419, 0.84628, 1.02938, 1.16296, 1.26721, 1.35218, 1.4236, 1.48501, 1.53875] as const;
export const LARGEST_VARIANCE = [1, 0.68169, 0.55947, 0.49172, 0.44753, 0.41593, 0.39192, 0.3729, 0.35735, 0.34434] as const;
/** A tongue of the region narrower than this does not carry a maximum on its own. Prior, ours: about half of the
 * width over which redness fades. */
export const SPIKE_WIDTH_MM = 1;
/** Direction of the toe's axis in the card's plane, when told / from the toe's outline / taken as the card's down.
 * Prior, ours: a toe lies in the notch within about 12 degrees. */
export const AXIS_U_DEG = { given: 2, toeOutline: 3, cardDown: 6 } as const;
/** A region whose edge runs along the border of the map for longer than this is not wholly in view. */
export const OUT_OF_VIEW_EDGE_MM = 1;

// --- Groove: what cannot be a groove beside a big toe's nail -----------------------------------------------------

/** A lateral margin or cut edge shorter than this says nothing. Common practice: the plate is 10–15 mm long. */
export const GROOVE_SHORTEST_LINE_MM = 2;
/** A strip of 2–3 mm is removed (common practice); three times that is a wrong line. */
export const GROOVE_WIDEST_MM = 10;

// --- The strip of skin beside the margin ---------------------------------------------------------------------------

/** Width of the fold, seen from above: the strip that soggy skin is a share of, and that has to be in view. Ours: the
 * lateral fold of a big toe is 3–5 mm wide between margin and the toe's outline. */
export const FOLD_STRIP_MM = 4;
/** Density at which the strip is counted: 50 to 120 mm² to about a tenth. */
export const STRIP_PX_PER_MM = 4;
/** Spacing of the margin's points for telling sides: well under the radius of the fold's corner. */
export const MARGIN_SPACING_MM = 0.25;
/** The toe behind the nail that gives the middle for comparing both sides, counted from the margin's proximal end: past the
 * proximal fold, before the toe's root. Ours. */
export const KNUCKLE_FROM_MM = 3;
export const KNUCKLE_TO_MM = 16;
export const LEAST_KNUCKLE_SLICES = 8;
/** With less of the fold turned toward the camera than this, redness on it may be hidden. Ours: half. */
export const LEAST_FOLD_SEEN = 0.5;
/**
 * With the lens leaning over from the other side by more than this, areas of redness are not given: what is left of the fold is
 * seen edge-on. On own phantoms (seeds 1, 7, 11, 61 and 62; 283 regions) areas beyond it were 29 % too small in the median (20), those
 * from 12° to 20° 8 % (23); reach held its stated uncertainty.
 */
export const MOST_LEAN_OVER_FOLD_DEG = 20;
/** What the plain body leaves open of that share, one standard deviation. Prior, ours: 5° of roll turn about a tenth of the fold. */
export const FOLD_SEEN_U = 0.1;

// --- Raw surface ---------------------------------------------------------------------------------------------------

/** Pixels on the border between two tissues show a colour of neither: about this share of a raw surface, ours. */
export const MIXED_PIXELS_U_PERCENT = 2;

// --- One toe on two photos -----------------------------------------------------------------------------------------

/** Spacing of the plate's points that are matched, share of the best pairs that count, and most rounds. Ours: a plate of
 * 45 mm outline gives 180 pairs; free edge and cut edge may have changed between visits. */
export const PLATE_SPACING_MM = 0.25;
export const REGISTRATION_KEPT_SHARE = 0.8;
export const REGISTRATION_ROUNDS = 30;
/** A carried margin farther off than this is another line; and how far along the margin its offset is averaged. Ours. */
export const CARRY_WITHIN_MM = 1.5;
export const CARRY_SMOOTH_MM = 1.5;

/** The difference of two index maps is looked at every half millimetre, averaged over one. Redness is never smaller. */
export const DIFFERENCE_STEP_MM = 0.5;
export const DIFFERENCE_SCALE_MM = 1;
/** Limit of detection, and what shading and two tone curves leave over between two photos of uniform skin. Ours. */
export const DIFFERENCE_K = 3;
export const DIFFERENCE_FLOOR_EI = 1;
/** A redder place counts when it comes this near the margin and is no speck; and so much reference skin both photos need. Ours. */
export const DIFFERENCE_NEAR_MM = 3;
export const LEAST_DIFFERENCE_MM2 = 4;
export const LEAST_COMPARED_MM2 = 20;

// --- Redness -------------------------------------------------------------------------------------------------------

/** Side of the squares whose means are taken as independent (type A): larger than pores, hairs and JPEG's blocks. Prior, ours. */
export const BLOCK_SIDE_MM = 2;
/** What is left in a home card's tone curve and white balance, as a share of the excess. Prior, ours. */
export const INDEX_GAIN_RELATIVE_U = 0.05;
/** Redness is not averaged where less than this share of the region has an index at all. Prior, ours. */
export const LEAST_INDEX_SHARE = 0.5;
/** Reference field, where the caller does not state its uncertainty. Prior, ours: resting skin beside a nail varies by this. */
export const REFERENCE_EI_U = 1.5;
export const REFERENCE_DELTA_A_U = 0.7;

// --- The toe as a cylinder ---------------------------------------------------------------------------------------

/** Height of the slices across the toe, and how far the half width is smoothed along it. */
export const SLICE_MM = 0.5;
export const HALF_WIDTH_SMOOTHING_MM = 3;
/** A cylinder from less toe than this, or from half widths outside these, is no big toe. Anatomy: big toes are
 * 15–35 mm wide, a child's 12. */
export const SHORTEST_TOE_MM = 8;
export const HALF_WIDTH_RANGE_MM = { least: 5, most: 22 } as const;
/** Slices narrower than this share of the widest belong to the rounded tip, or to an end that the map cuts off
 * askew, and say nothing of the centre line. Prior, ours. */
export const CENTRE_LINE_SHARE = 0.85;
/** Beyond this share of the half width the skin is seen almost edge-on: the stretch is that of the section assumed and not the toe's. */
export const CAP_SHARE = 0.97;
/** An unrolled reach less certain than this (k = 2) cannot show the growth by 2 mm that a person has to see. Ours. */
export const MOST_UNROLLED_REACH_U_MM = 2;
/** More of the region than this beyond the cap, and the unrolled numbers would be made of the cap. */
export const MOST_CAPPED_SHARE = 0.5;
/** Where the middle of the toe lies across, rolled a little: 4° · 10 mm. Prior, ours. */
export const CENTRE_LINE_U_MM = 0.7;

/** A big toe's section. Prior, ours: a little wider than high, and flat enough on top that a nail as wide as three quarters of it bends
 * by 2 mm over its 15 mm, which is a radius of 14 mm; an ellipse as high would bend it by 2.6 mm. */
export const USUAL_SECTION: ToeSection = { flatness: 0.85, squareness: 2.3 };
/** How far toes differ from it, one standard deviation. Prior, ours. */
export const SECTION_U: ToeSection = { flatness: 0.08, squareness: 0.2 };
/** Where an edge lies at the body's horizon an error is held to grow no more than this. Ours. */
export const MOST_SIGHT_STRETCH = 4;
/** Where the lateral nail folds lie, as a share of the toe's half width. Common practice: the nail spans about three quarters. */
export const TOE_FOLD_SHARE = 0.72;
