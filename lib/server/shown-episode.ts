import type { OutlinesJson } from '../pipeline/analysis-json';
import type { Homography } from '../rectify/homography';
import type { AnswerWords } from '../report/answer-words';
import type { LinePlaces } from '../report/line-places';
import type { PenLine } from '../report/pen-lines';
import type { Fact } from '../report/procedure-words';
import type { DrawnOutline } from '../segment/edge-cost';
import type { SetPoint } from '../segment/snap-line';
import type { TrendPlot } from '../report/trend-plot';
import type { Stand } from './lay-over';

/** All that the page of one episode shows; plain data. Times are written out in the clinic's zone. */
export interface EpisodePage {
  readonly caseCode: string;
  readonly clinic: string;
  readonly day: number;
  readonly madeAt: string;
  readonly procedureAt: string;
  readonly closedAt: string | null;
  readonly closing: ShownClosing;
  readonly facts: readonly Fact[];
  readonly risks: readonly string[];
  readonly plan: string;
  readonly ruleBookVersion: string;
  readonly open: readonly ShownFinding[];
  readonly closed: readonly ShownFinding[];
  readonly plots: readonly ShownPlot[];
  readonly events: readonly { readonly letter: string; readonly when: string; readonly words: string }[];
  /** What the raw area's course comes to, in sentences. */
  readonly raw: readonly string[];
  readonly photos: readonly ShownPhoto[];
  readonly days: readonly ShownDay[];
  readonly messages: readonly { readonly at: string; readonly by: string; readonly text: string }[];
  /** May whoever looks draw outlines anew? */
  readonly mayRedraw: boolean;
  readonly resolutions: readonly { readonly at: string; readonly by: string; readonly rule: string; readonly action: string; readonly reason: string }[];
}

/** How the follow-up ended, and what it takes to end it. */
export interface ShownClosing {
  readonly episodeId: string;
  /** May whoever looks close the case, or open it again? */
  readonly mayClose: boolean;
  /** Ids of all that is open. */
  readonly seen: readonly string[];
  /** What is open now, by rule: each needs a word before the case is closed. */
  readonly open: readonly { readonly rule: string; readonly name: string; readonly level: string; readonly sentences: readonly string[] }[];
  /** Oldest first. */
  readonly record: readonly ClosingRecord[];
}

export interface ClosingRecord {
  readonly key: string;
  /** Or opened again. */
  readonly closed: boolean;
  readonly at: string;
  readonly by: string;
  readonly words: string;
  readonly leftOpen: readonly string[];
}

export interface ShownFinding {
  readonly key: string;
  readonly name: string;
  readonly level: string;
  readonly sentence: string;
  readonly limits: readonly string[];
  readonly since: string;
  readonly raisedForRisk: boolean;
  readonly ruleBookVersion: string;
  /** By whom and why it was closed; null while it is open. */
  readonly closed: string | null;
}

export interface ShownPlot {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly plot: TrendPlot;
  readonly sentences: readonly string[];
  /** Read with the table. */
  readonly more: readonly string[];
  /** The same data: values, and why there is none. */
  readonly rows: readonly PlotRow[];
}

export interface PlotRow {
  readonly day: string;
  readonly value: string;
  readonly U: string;
  /** Why there is no value. */
  readonly note: string;
}

export interface ShownPhoto {
  readonly id: string;
  readonly day: string;
  /** Beside the pen line, as one would write it on the skin. */
  readonly date: string;
  readonly at: string;
  /** Address of the picture for people's eyes; null where there is none. */
  readonly picture: string | null;
  readonly size: { readonly widthPx: number; readonly heightPx: number } | null;
  /** Shown pixels → card millimetres; null where the card was not found. */
  readonly cardFromView: Homography | null;
  readonly tiltDeg: number | null;
  /** Measured, or why not, in words. */
  readonly state: string;
  /** Somebody else's card is in it: whose toe it is a person has to say. */
  readonly isHeld: boolean;
  /** All outlines that there are, newest first; the last are the program's own. At least one. */
  readonly versions: readonly ShownVersion[];
  /** Where its toe lies and from where the camera looks. */
  readonly stand: Stand;
  /** Is the map kept from which its outlines can be drawn anew? */
  readonly canRedraw: boolean;
}

/** Lines in the card's millimetres, straightened. */
export type FlatLines = Pick<OutlinesJson, 'erythema' | 'nailFoldMargin' | 'raw'>;

/** Outlines of one photo, and what was measured with them. */
export interface ShownVersion {
  /** 0 where the program drew all of it. */
  readonly number: number;
  /** Whose outlines they are, when they were drawn and why. */
  readonly words: string;
  /** Where the camera shows the skin, in the card's millimetres. */
  readonly lines: readonly PenLine[];
  readonly places: LinePlaces;
  /** As they lie, looked at straight from above: for drawing over another photo. */
  readonly flat: FlatLines;
  readonly numbers: readonly string[];
  /** Points that a person set, by outline. */
  readonly points: Readonly<Partial<Record<DrawnOutline, readonly SetPoint[]>>>;
}

export interface ShownDay {
  readonly key: string;
  readonly day: string;
  readonly at: string;
  readonly answers: AnswerWords;
  readonly worry: string;
  readonly photo: string;
}
