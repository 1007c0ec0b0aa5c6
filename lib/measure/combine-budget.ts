/** One influence on a result (JCGM 100:2008, 4 and 5.1). */
export interface BudgetTerm {
  readonly name: string;
  /** Standard uncertainty of the input, in its own unit, ≥ 0. */
  readonly u: number;
  /** How much the result moves per unit of the input; 1 when left out. The sign does not matter here. */
  readonly sensitivity?: number;
  /** Degrees of freedom, > 0; infinite when left out. */
  readonly dof?: number;
}

export interface CombinedBudget {
  /** What each influence contributes, |sensitivity| · u, in the unit of the result. */
  readonly terms: Readonly<Record<string, number>>;
  readonly uCombined: number;
  /** Welch–Satterthwaite; null where every input has infinitely many. Truncate before looking up Student's t. */
  readonly effectiveDof: number | null;
}

function guard({ name, u, sensitivity = 1, dof = Infinity }: BudgetTerm): void {
  if (!(u >= 0) || !Number.isFinite(u)) throw new RangeError(`combineBudget: ${name}: u must be ≥ 0, received ${u}`);
  if (!Number.isFinite(sensitivity)) {
    throw new RangeError(`combineBudget: ${name}: sensitivity must be finite, received ${sensitivity}`);
  }
  if (!(dof > 0)) throw new RangeError(`combineBudget: ${name}: dof must be > 0, received ${dof}`);
}

/**
 * Combines independent influences into one standard uncertainty. Influences that are fully correlated belong into one
 * term whose sensitivity is the sum of theirs: a scale error stretches both sides of an area, so it counts twice there.
 *
 * @param terms independent influences with different names
 * @returns every contribution by name, their root sum of squares, effective degrees of freedom
 * @throws RangeError for a negative u, a sensitivity that is not finite, dof ≤ 0, or a name used twice
 * Source: JCGM 100:2008, equations (10) and (G.2b).
 * @example combineBudget([{ name: 'scale', u: 3 }, { name: 'edge', u: 2, sensitivity: 2 }]).uCombined // 5
 */
export function combineBudget(terms: readonly BudgetTerm[]): CombinedBudget {
  const contributions: Record<string, number> = {};
  let variance = 0;
  let satterthwaite = 0;
  for (const term of terms) {
    guard(term);
    if (term.name in contributions) throw new RangeError(`combineBudget: two terms are named ${term.name}`);
    const contribution = Math.abs(term.sensitivity ?? 1) * term.u;
    contributions[term.name] = contribution;
    variance += contribution ** 2;
    satterthwaite += contribution ** 4 / (term.dof ?? Infinity);
  }
  return {
    terms: contributions,
    uCombined: Math.sqrt(variance),
    effectiveDof: satterthwaite > 0 ? variance ** 2 / satterthwaite : null,
  };
}
