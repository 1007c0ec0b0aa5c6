import { LIMITS, type LimitId, RULE_BOOK_VERSION } from './constants';

/** What the rules read: a version, and one number for every limit. */
export interface RuleBook {
  /** Names the defaults, and every limit a clinic has changed. */
  readonly version: string;
  readonly limits: Readonly<Record<LimitId, number>>;
}

export const LIMIT_IDS = Object.keys(LIMITS) as LimitId[];

const defaults = Object.fromEntries(LIMIT_IDS.map((id) => [id, LIMITS[id].value])) as Record<LimitId, number>;

export const DEFAULT_RULE_BOOK: RuleBook = { version: RULE_BOOK_VERSION, limits: defaults };

/**
 * The rule book with a clinic's own limits, each held to its allowed range.
 *
 * @param changes limits by id, in the limit's own unit
 * @returns the book, its version telling what was changed; or one sentence naming what is not allowed
 * @example changeRuleBook({ 'fever.celsius': 37.8 }) // the book, version '2026.3 with fever.celsius=37.8'
 */
export function changeRuleBook(changes: Readonly<Record<string, number>>): { readonly book: RuleBook } | { readonly problem: string } {
  const limits = { ...defaults };
  for (const [id, value] of Object.entries(changes)) {
    if (!Object.hasOwn(LIMITS, id)) return { problem: `There is no limit “${id}”.` };
    const { least, most, unit } = LIMITS[id as LimitId];
    if (!(value >= least && value <= most)) return { problem: `${id} may lie between ${least} and ${most} ${unit}, received ${value}.` };
    limits[id as LimitId] = value;
  }
  const changed = LIMIT_IDS.filter((id) => limits[id] !== defaults[id]).map((id) => `${id}=${limits[id]}`);
  return { book: { version: [RULE_BOOK_VERSION, ...(changed.length > 0 ? ['with', ...changed] : [])].join(' '), limits } };
}
