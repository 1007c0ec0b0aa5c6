/** What a rule says, and what becomes of it. */
export const RULE_IDS = [
  'reach-moderate',
  'reach-mild',
  'spreading',
  'spreading-proximal',
  'streak-or-fever',
  'dusky-toe',
  'bleeding',
  'purulent',
  'pain-rising',
  'stalled',
  'late',
  'relapse',
  'spike-suspect',
  'bone-felt',
  'macerated',
  'over-granulation',
  'antibiotic-no-better',
  'silent',
  'cannot-judge',
  'dry',
] as const;
export type RuleId = (typeof RULE_IDS)[number];

/** `retake` asks for another photo and is no place in the queue; the others are, in this order. */
export type Level = 'retake' | 'visit' | 'soon' | 'today' | 'now';

export interface SeenNumber {
  readonly name: string;
  readonly value: number;
  /** UCUM code, 'h', 'd' or '/10'. */
  readonly unit: string;
  /** Standard uncertainty, where the number was measured. */
  readonly u?: number;
}

/** What a finding rests on. */
export interface Evidence {
  readonly numbers: readonly SeenNumber[];
  /** Names of the photos, or the times of their check-ins where they have no name. */
  readonly photos: readonly string[];
  /** Times of the check-ins whose answers count. */
  readonly checkIns: readonly string[];
}

/** What a rule returns when it applies. */
export interface Raised extends Evidence {
  readonly level: Level;
  /** Hours after the procedure at which the newest piece of the evidence was known. */
  readonly knownHours: number;
  readonly sentence: string;
  /** It is wet again: an open "dry" is closed by this. */
  readonly endsDryness?: boolean;
}

export interface Closing {
  readonly at: string;
  /** A person, or the rule that says so. */
  readonly by: string;
  readonly reason: string;
}

export interface Finding {
  readonly rule: RuleId;
  readonly level: Level;
  /** ISO 8601, UTC: the moment from which it could be known. */
  readonly at: string;
  readonly sentence: string;
  readonly evidence: Evidence;
  readonly ruleBookVersion: string;
  /** One level higher because the foot is at risk. */
  readonly raisedForRisk: boolean;
  /** Null while it is open. A closed finding stays in the list. */
  readonly closed: Closing | null;
}
