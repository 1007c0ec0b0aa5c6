import type { LimitId } from './constants';
import type { Course } from './course';
import type { Finding, Level, Raised, RuleId } from './finding';
import type { RuleKind } from './raise-level';
import type { Visit } from './visits';

/** Everything that was known at one moment; a rule sees nothing else. */
export interface View {
  readonly hours: number;
  readonly course: Course;
  readonly limits: Readonly<Record<LimitId, number>>;
  /** Oldest first; the newest may still be open. */
  readonly visits: readonly Visit[];
  readonly open: readonly Pick<Finding, 'rule' | 'level'>[];
  /** When it was found to be dry; null where it is not, or no longer. */
  readonly dryHours: number | null;
  /** A person has confirmed that it is dry. */
  readonly dryConfirmed: boolean;
}

export interface Rule {
  readonly id: RuleId;
  readonly kind: RuleKind;
  /** It names a level for feet at risk itself, or is never raised; so it is not raised again. */
  readonly ownRiskLevel: boolean;
  /** The highest level it gives: once that is open, it has nothing to add. */
  readonly highest: Level;
  readonly judge: (view: View) => Raised | null;
}
