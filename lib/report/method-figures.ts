/** What the benches write for the method page, and the page reads: `npm run bench -- method`. Shares are fractions. */
interface MadeBy {
  /** The day of the run. */
  readonly madeOn: string;
  readonly methodVersion: string;
}

export interface ErrorFigures {
  readonly medianRelError: number | null;
  readonly p95RelError: number | null;
  readonly coverage: number | null;
}
export interface LengthFigures {
  readonly medianMm: number | null;
  readonly p95Mm: number | null;
  readonly coverage: number | null;
}

export interface GroupFigures {
  readonly photos: number;
  readonly refusedShare: number | null;
  readonly erythemaArea: ErrorFigures;
  readonly reach: LengthFigures;
}

export interface AccuracyFigures extends MadeBy {
  readonly seed: number | null;
  readonly photos: number;
  readonly refusedShare: number | null;
  readonly erythemaArea: ErrorFigures & { readonly medianRelU: number | null };
  readonly reach: LengthFigures;
  readonly nailFoldMargin: { readonly rmsMm: number | null };
  readonly grooveWidth: { readonly medianMm: number | null; readonly coverage: number | null };
  readonly length: { readonly medianRelError: number | null; readonly p95RelError: number | null };
  readonly pose: { readonly tiltMedianErrorDeg: number | null; readonly distanceMedianErrorMm: number | null };
  readonly falseErythema: { readonly photos: number; readonly p95Mm2: number | null };
  readonly faults: { readonly photos: number; readonly caughtShare: number | null; readonly cleanRefusedShare: number | null };
  readonly byItaClass: Readonly<Record<string, GroupFigures>>;
  readonly byLight: Readonly<Record<string, GroupFigures>>;
}

export interface FairnessFigures extends MadeBy {
  readonly seed: number;
  readonly contrastEi: number;
  /** Worst class at most this far behind the best. */
  readonly mostBehind: number;
  readonly unfair: readonly string[];
  readonly classes: readonly {
    readonly skinClass: string;
    readonly photos: number;
    readonly sensitivity: number;
    readonly notMissed: number;
    readonly answers: Readonly<Record<string, number>>;
  }[];
}

export interface SensitivityLevel {
  readonly level: number | string;
  readonly photos: number;
  readonly refused: number;
  readonly gates: readonly string[];
  /** Areas relative to the truth, lengths in mm; photos that a gate refused are in it. */
  readonly measurands: Readonly<Record<string, { readonly errors: readonly number[]; readonly medianAbsError: number | null; readonly medianU: number | null; readonly outsideU: number; readonly notMeasured: readonly string[] }>>;
}

export interface SensitivityFigures extends MadeBy {
  readonly photos: number;
  readonly factors: readonly {
    readonly name: string;
    readonly unit: string;
    readonly gate: { readonly id: string; readonly limit: number } | null;
    readonly baseLevel: number | string;
    readonly levels: readonly SensitivityLevel[];
  }[];
}

export interface OutsideFigures extends MadeBy {
  readonly tables: readonly {
    readonly kind: string;
    readonly figure: string;
    readonly worse: string;
    readonly assumed: string | null;
    readonly facts: Readonly<Record<string, number | string | null>>;
    readonly rows: readonly { readonly name: string; readonly verdict: string; readonly figure: number | null; readonly note: string }[];
  }[];
}

export interface MethodFigures {
  readonly accuracy: AccuracyFigures;
  readonly fairness: FairnessFigures;
  readonly sensitivity: SensitivityFigures;
  readonly outside: OutsideFigures;
}
