import { LIMITS, type LimitId } from '../decide/constants';
import { RULE_LIMITS, type ReviewRule } from './constants';

/** A limit as it was in force when the finding was made. */
export interface AppliedLimit {
  readonly id: LimitId;
  readonly value: number;
  /** UCUM code. */
  readonly unit: string;
  readonly source: string;
  /** The clinic has set it differently from the default. */
  readonly changed: boolean;
}

/**
 * The limits behind a rule, by the version of the rule book that the finding names.
 *
 * @param rule of the finding
 * @param ruleBookVersion as kept with it: the book's name and each limit that a clinic has changed
 * @returns in the order of the rule book; empty where the rule rests on answers alone
 * @example limitsOfRule('reach-moderate', '2026.1 with reachModerate.mm=18')[0].value // 18
 */
export function limitsOfRule(rule: ReviewRule, ruleBookVersion: string): AppliedLimit[] {
  const changes = new Map(ruleBookVersion.split(' ').map((word) => word.split('=') as [string, string | undefined]));
  return RULE_LIMITS[rule].map((id) => {
    const { value, unit, source } = LIMITS[id];
    const own = Number(changes.get(id));
    const changed = changes.has(id) && Number.isFinite(own);
    return { id, value: changed ? own : value, unit, source, changed };
  });
}
