/** What the review list shows; plain data with its words ready. */
export interface ReviewRow {
  readonly episodeId: string;
  readonly caseCode: string;
  /** now, today, soon, visit or retake: decides the shape; the words say it. */
  readonly level: string;
  readonly levelWords: string;
  readonly day: number;
  readonly why: string;
  /** What else is open on the case, by name. */
  readonly also: readonly string[];
  readonly wait: { readonly words: string; readonly shareOfLimit: number | null; readonly isOver: boolean };
  readonly reach: ReachTrend;
  /** Who has the case open; null where nobody has. */
  readonly openWith: { readonly name: string; readonly mine: boolean } | null;
  /** What the clinician was asked, and by whom. */
  readonly asked: { readonly by: string; readonly note: string } | null;
}

/** Reach over the days since the procedure, in mm, with its expanded uncertainty; gaps stay gaps. */
export interface ReachTrend {
  readonly points: readonly { readonly day: number; readonly mm: number; readonly U: number }[];
  readonly stretches: readonly (readonly [number, number])[];
  readonly refusedDays: readonly number[];
  readonly toDay: number;
}

export interface ReviewList {
  /** Another one means that something has changed. */
  readonly stamp: string;
  readonly clinic: string;
  readonly rows: readonly ReviewRow[];
  /** Cases behind the last row. */
  readonly more: number;
}
