/** Numbers of the segment stage. Those marked "ours" are choices, with the reasoning beside them. */

/** A tissue is there where its field says "more likely than not". */
export const HALF = 0.5;
/**
 * Level of the redness outline. On 75 of this project's own phantoms the area came out 2 % too large in the median at 0.42,
 * unbiased at 0.46 and 3 % too small at 0.50; the median error hardly moves between them.
 */
export const ERYTHEMA_LEVEL = 0.44;
/**
 * The index's say in the outline (`outline-level.ts`). On 95 own phantoms (seeds 1 and 11) a say of 0.3 brought the nine-tenths mark
 * of the area error from 35 to 28 %, the 95 % mark from 42 to 37 %; 0.5 brings no more there and worsens the median.
 */
export const INDEX_SAY = 0.3;
/** Between these levels the model's outline stays the model's. */
export const LOWEST_LEVEL = 0.3;
export const HIGHEST_LEVEL = 0.65;
/** The outline is where half of the plateau's added blood is; that is 0.6 of its index (measurement page), less what smoothing takes from the plateau. */
export const EDGE_SHARE = 0.5;
/** The plateau is what nine tenths of the region stay below: soft edges are part of it too. */
export const PLATEAU_QUANTILE = 0.9;
/** Side of the window over which the index is averaged: as much as a bell of 0.25 mm. */
export const OUTLINE_SMOOTH_MM = 0.9;
/** Skin around a region, beyond its soft edge and still beside it. */
export const SURROUNDINGS_FROM_MM = 1.25;
export const SURROUNDINGS_TO_MM = 2.5;
/** Bounds between which an outline could as well lie: one standard deviation of a logistic edge, ours. */
export const OUTLINE_LOW = 0.31;
export const OUTLINE_HIGH = 0.69;

/** Least areas, mm². A toe fills at least a thumb-nail's worth of the map; specks are no tissue. Ours. */
export const LEAST_TOE_MM2 = 80;
export const LEAST_PLATE_MM2 = 15;
export const LEAST_GROOVE_MM2 = 1;
export const LEAST_WOUND_MM2 = 0.4;
export const LEAST_ERYTHEMA_MM2 = 1;

/** Redness belongs to the fold when it comes within 1 mm of the margin, or of the wound at it (definition). */
export const JOINED_WITHIN_MM = 1;
/** Wound and soggy skin lie in or beside the groove. Ours. */
export const WOUND_WITHIN_MM = 5;

/** Reference skin keeps this far from everything that is not plain skin. Ours: twice a soft edge's half width. */
export const REFERENCE_CLEAR_MM = 1.5;
/** And this far from where redness is even suspected. */
export const SUSPECTED_REDNESS = 0.2;
/** Near the toe's outline skin is seen edge-on and in shadow. */
export const OUTLINE_CLEAR_MM = 1;
export const LEAST_REFERENCE_MM2 = 40;
/** Light below this share of the card's white is too dark for its ratio of channels to mean much. Ours. */
export const LEAST_LIGHT = 0.008;

/** Averaging length for judging what can be seen: redness is never smaller. */
export const NOISE_SCALE_MM = 1;

/** Ring just inside and just outside an outline in which the step of the index is looked for. */
export const EDGE_RING_FROM_MM = 0.3;
export const EDGE_RING_TO_MM = 1.8;
/**
 * Mean field inside the outline, rescaled to 0…1, below which the model itself doubts the region. On own phantoms (seeds 1 and 11)
 * four of the five areas off by more than half lay below it, and six others; on toes without redness but with iodine, varnish,
 * shadow edges or dried blood (48, seed 1) all five regions that were found, the highest at 0.47.
 */
export const LEAST_CONFIDENCE = 0.55;
/** A step must exceed this many standard deviations of the skin's own scatter (measurement page: max(k · spread, floor)); 3 as a limit of detection (IUPAC 1976). */
export const EVIDENCE_K = 3;
/** And this many units of the index: white balance and tone curve leave up to 1.5 EI behind (measurement page). */
export const EVIDENCE_FLOOR_EI = 1.0;
/** Redness of clinical size raises the index of light skin by at least this much (second try: plateaus 6–20 EI). Ours. */
export const CLINICAL_STEP_EI = 4;

/** Spacing at which the nail unit's outline is walked. */
export const MARGIN_STEP_MM = 0.2;
/** Margin samples: a point of the nail unit's outline belongs to the treated margin from this field value on. */
export const MARGIN_LEVEL = 0.3;
/** Gaps in the margin up to this long are bridged. */
export const MARGIN_GAP_MM = 2;
export const LEAST_MARGIN_MM = 6;
/** The fold rounds off toward the tip within this length; groove without a margin for longer is groove whose margin is covered. Ours. */
export const FOLD_END_MM = 3;
export const MARGIN_SEARCH_MM = 0.5;

/**
 * Raw surface by colour against the card's white: darker than this lightness is dark (crust, dried blood); hues from here on
 * are yellow (slough, pus), below it red. Fresh granulation lies near hue 25°, slough near 75°: half way. Ours.
 */
export const DARK_BELOW_L = 25;
export const LIGHTNESS_U = 4;
export const YELLOW_FROM_HUE_DEG = 50;
export const HUE_U_DEG = 6;

/** Outlines' own uncertainty where the fields are sharp: half a map pixel and what training labels resolve. Ours. */
export const LEAST_BOUNDARY_U_MM = 0.1;

/** The nail lies within this distance of its expected place. Common practice: a big toe's plate is 10–17 mm each way. */
export const NAIL_ZONE_MM = 9;
/** Brighter than this share of the card's paper in every channel is a mirror image of the lamp, not skin or plate. Ours. */
export const GLARE_LIGHT = 0.9;
/** A wet fold always has small highlights; from this area on they can hide a groove of 2–3 mm over several mm. Ours. */
export const GLARE_LIMIT_MM2 = 14;

/** Kept around the tissues when the map is cut down to the toe: outlines end inside it, and a gate looks just beside it. */
export const CROP_MARGIN_MM = 1;

/** Half the size of the millimetre map: the reference field's place runs from −1 to 1 over it, whatever part was cut out. */
export const FIELD_HALF_SPAN_MM = { across: 22, down: 28 } as const;
