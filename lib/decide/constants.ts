import { WARNING_LIMITS } from '../care/warning-limits';

/**
 * The rule book as data: every clinical limit with its unit, its default, the range in which a clinic may change it, and
 * its source. A rule reads its limits from here and knows no number of its own.
 */
export const RULE_BOOK_VERSION = '2026.3';

export interface Limit {
  readonly unit: 'mm' | 'mm2' | '%' | 'h' | 'd' | '/10' | 'Cel' | '1';
  readonly value: number;
  /** A clinic may set it from here … */
  readonly least: number;
  /** … to here. */
  readonly most: number;
  readonly source: string;
}

const limit = (unit: Limit['unit'], value: number, least: number, most: number, source: string): Limit => ({ unit, value, least, most, source });

const IWGDF = 'IWGDF/IDSA 2023, by analogy';
const NICE = 'NICE NG141 (2019)';
const TRIALS = 'trials of 2007–2021 and patient leaflets; the choice is ours';
const PRACTICE = 'common practice';
const OURS = 'ours';
const SIMULATED = 'ours, from simulated courses';

export const LIMITS = {
  'visit.hours': limit('h', 6, 3, 12, OURS),
  'fresh.hours': limit('h', 36, 24, 48, `${OURS}: a photo speaks for a sign reported within a day and a half`),
  'early.hours': limit('h', 72, 48, 96, 'leaflets: redness and weeping are expected at first'),
  'early.chemicalHours': limit('h', 120, 72, 168, 'sterile redness after phenol peaks on days 2–5 (clinical lore)'),
  'reachModerate.mm': limit('mm', 20, 10, 20, IWGDF),
  'reachMild.mm': limit('mm', 5, 3, 8, IWGDF),
  'spreading.mm': limit('mm', 2, 1.5, 4, `${NICE}: border marking; the size is ours`),
  'spreading.beforeMm': limit('mm', 1, 0.5, 2, SIMULATED),
  'spreading.areaPercent': limit('%', 25, 15, 50, SIMULATED),
  'spreading.areaBeforePercent': limit('%', 12, 5, 25, SIMULATED),
  'spreading.areaMm2': limit('mm2', 5, 0, 15, `${OURS}: as much as for redness that comes back; 25 % of a small area is less`),
  'spreading.fewAreaMm2': limit('mm2', 12, 5, 20, `only where two visits are all there is to compare with; ${SIMULATED}: an edge that moves by 1 mm along a fold of 12 mm`),
  'spreading.areaReachMm': limit('mm', 1, 0.5, 2, SIMULATED),
  'spreading.baseFromHours': limit('h', 48, 24, 72, SIMULATED),
  'spreading.earlyBaseFromHours': limit('h', 24, 24, 36, `${SIMULATED}: only where no later photo can be compared with`),
  'spreading.earlyBaseMm': limit('mm', 4, 3, 6, `only against a photo from before 48 h, or of the visit just before, where there is no other; ${SIMULATED}: sterile redness after phenol rises by up to 3 mm over the first days`),
  'spreading.baseOlderHours': limit('h', 12, 6, 24, SIMULATED),
  'fever.celsius': limit('Cel', WARNING_LIMITS.feverC, 37.5, 38.5, 'SIRS items'),
  'fever.lowCelsius': limit('Cel', WARNING_LIMITS.tooColdC, 35, 36, 'SIRS items'),
  'fever.lowAgainHours': limit('h', 36, 12, 72, `${OURS}: "read twice" means two readings in a row`),
  'numb.hours': limit('h', WARNING_LIMITS.numbHours, 12, 36, PRACTICE),
  'purulent.reachMm': limit('mm', 5, 3, 8, IWGDF),
  'pain.riseTwice': limit('/10', 2, 1, 3, PRACTICE),
  'pain.riseOnce': limit('/10', 4, 3, 6, PRACTICE),
  'pain.fromHours': limit('h', 24, 12, 48, `${PRACTICE}: the anaesthetic has worn off`),
  'pain.strong': limit('/10', 4, 3, 6, `${PRACTICE}: moderate pain begins at 4`),
  'stalled.peakPercent': limit('%', 50, 40, 70, 'inference from ulcer literature (Sheehan 2003, Coerper 2009)'),
  'stalled.dropPercent': limit('%', 12, 5, 20, SIMULATED),
  'stalled.photos': limit('1', 4, 4, 8, 'with fewer no one-sided trend at 95 % exists'),
  'stalled.spanHours': limit('h', 90, 72, 168, SIMULATED),
  'stalled.extraDays': limit('d', 1, 0, 4, OURS),
  'expected.none': limit('d', 11, 8, 14, TRIALS),
  'expected.naoh': limit('d', 11, 8, 18, TRIALS),
  'expected.phenol30': limit('d', 15, 12, 21, TRIALS),
  'expected.phenol60': limit('d', 22, 18, 35, TRIALS),
  'expected.unknown': limit('d', 22, 18, 35, TRIALS),
  'slow.none': limit('d', 21, 14, 28, TRIALS),
  'slow.naoh': limit('d', 21, 14, 28, TRIALS),
  'slow.phenol30': limit('d', 28, 21, 42, TRIALS),
  'slow.phenol60': limit('d', 42, 28, 56, TRIALS),
  'slow.unknown': limit('d', 42, 28, 56, TRIALS),
  'late.none': limit('d', 28, 21, 42, TRIALS),
  'late.naoh': limit('d', 42, 28, 56, TRIALS),
  'late.phenol30': limit('d', 56, 42, 84, TRIALS),
  'late.phenol60': limit('d', 84, 56, 112, TRIALS),
  'late.unknown': limit('d', 84, 56, 112, TRIALS),
  'relapse.areaPercent': limit('%', 25, 15, 50, SIMULATED),
  'relapse.areaMm2': limit('mm2', 5, 3, 15, OURS),
  'spike.afterDays': limit('d', 10, 7, 21, PRACTICE),
  'boneFelt.afterDays': limit('d', 14, 10, 21, `${PRACTICE}: suspected osteomyelitis`),
  'macerated.percent': limit('%', 25, 15, 50, PRACTICE),
  'overGranulation.mm': limit('mm', 1, 0.5, 3, PRACTICE),
  'antibiotic.hours': limit('h', 60, 48, 72, `${NICE}: two to three days`),
  'antibiotic.beforeHours': limit('h', 48, 24, 72, OURS),
  'antibiotic.afterHours': limit('h', 36, 12, 48, OURS),
  'dressing.staysHours': limit('h', 24, 12, 72, `${PRACTICE}: nobody can photograph a toe under its first dressing`),
  'dry.hours': limit('h', 12, 6, 48, 'patient leaflets: two dressings in a row come off clean'),
} as const satisfies Readonly<Record<string, Limit>>;

export type LimitId = keyof typeof LIMITS;

/** Rounding error of a computer, so that a value at a limit is at the limit. */
export const ROUNDING = 1e-9;
/** How many usable visits make a running median. Part of the rule "spreading". */
export const MEDIAN_OF = 3;
/** With k = 2 a standard uncertainty becomes an expanded one (JCGM 100). */
export const COVERAGE = 2;
/** 12.3 is written with one decimal; percent and hours with none. */
export const DECIMALS = 1;
