/** Numbers of the trend stage: conventions of statistics and of this project's drawing. Clinical limits are in `decide/rule-book.ts`. */

/** Confidence of every interval the trend shows. Convention. */
export const TREND_CONFIDENCE = 0.95;
/** One-sided level at which Mann–Kendall may be called a trend. Convention. */
export const TREND_LEVEL = 0.05;
/** With fewer photos no one-sided trend at 95 % exists: with four the smallest tail is 1/24, with three 1/6. Enumeration. */
export const LEAST_PHOTOS_FOR_TREND = 4;
/** An exponential needs five areas before its prediction agrees with what follows: Cukjati et al. 2001, Med Biol Eng Comput 39:263–71. */
export const LEAST_PHOTOS_FOR_PROJECTION = 5;
/** Up to here every order of the values is counted; beyond it the normal approximation is close enough (EPA QA/G-9S asks for exact tails to 10). */
export const MOST_FOR_EXACT_TAIL = 20;
/** Divisor of the variance of Mann–Kendall's S: [n(n − 1)(2n + 5) − Σ t(t − 1)(2t + 5)] / 18. Mann 1945, Kendall 1975. */
export const MANN_KENDALL_DIVISOR = 18;
export const MANN_KENDALL_TERM = 5;
/** The smallest detectable change never rests on a smaller standard uncertainty than this: the rule book's floors. */
export const LEAST_U_LENGTH_MM = 0.4;
export const LEAST_U_AREA_SHARE = 0.06;
/** A groove counts as closed at a twentieth of its largest raw area: where the published time-to-close example stops (100 → 5 %). */
export const CLOSED_SHARE = 0.05;
/** Weight of the newest value and width of the limits of the EWMA: NIST/SEMATECH e-Handbook 6.3.2.4. */
export const EWMA_WEIGHT = 0.3;
export const EWMA_LIMIT = 3;
/** CUSUM tuned to a shift of one standard deviation: slack half of it, decision at four (Montgomery; from memory). */
export const CUSUM_SLACK = 0.5;
export const CUSUM_DECISION = 4;
/** How many usable photos set the level that EWMA and CUSUM watch. Ours, the same three as the rule "spreading". */
export const LEVEL_PHOTOS = 3;
/** Projections farther ahead than this say nothing. Ours: the longest "late" limit, 84 days, once over. */
export const FARTHEST_PROJECTION_DAYS = 84;
/** A gap is drawn where no usable photo came for more than this: two missed days. Ours. */
export const GAP_DAYS = 2.5;
