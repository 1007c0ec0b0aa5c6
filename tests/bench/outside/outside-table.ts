/** One picture of somebody else's: what was done with it, in words and as a figure. */
export type Verdict = 'found' | 'refused' | 'wrong';

export interface OutsideRow {
  readonly name: string;
  readonly verdict: Verdict;
  /** In the table's unit; null where there is nothing to compare. */
  readonly figure: number | null;
  readonly note: string;
}

export interface OutsideTable {
  readonly kind: string;
  /** What a figure means and which way is worse. */
  readonly figure: string;
  readonly worse: 'higher' | 'lower';
  readonly assumed: string | null;
  readonly rows: readonly OutsideRow[];
  readonly facts: Readonly<Record<string, number | string | null>>;
}

const MOST_WORST = 5;

/** Pictures that went wrong, then those whose figure is worst. */
export function worstOf({ rows, worse }: OutsideTable): OutsideRow[] {
  const wrong = rows.filter(({ verdict }) => verdict === 'wrong');
  const sign = worse === 'higher' ? -1 : 1;
  const byFigure = rows.filter((row) => row.figure !== null && row.verdict !== 'wrong').sort((a, b) => sign * ((a.figure as number) - (b.figure as number)));
  return [...wrong, ...byFigure].slice(0, Math.max(MOST_WORST, wrong.length));
}

export const count = ({ rows }: OutsideTable, verdict: Verdict): number => rows.filter((row) => row.verdict === verdict).length;
