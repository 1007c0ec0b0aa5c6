import type { ReachTrend } from './review-row';

/** What the panel beside the list shows of one case; plain data with its words ready. */
export interface ReviewCase {
  readonly episodeId: string;
  readonly caseCode: string;
  readonly day: number;
  /** Facts of the procedure, each in words. */
  readonly facts: readonly { readonly name: string; readonly words: string }[];
  readonly risks: readonly string[];
  readonly findings: readonly ReviewFinding[];
  readonly photos: readonly ReviewPhoto[];
  readonly checkIns: readonly ReviewCheckIn[];
  readonly reach: ReachTrend;
  /** What was done before, newest first. */
  readonly earlier: readonly { readonly at: string; readonly by: string; readonly action: string; readonly about: string; readonly reason: string }[];
  /** Ids of all that is open: what a resolution is about. */
  readonly seen: readonly string[];
  readonly asksDryness: boolean;
  readonly actions: readonly { readonly action: string; readonly words: string; readonly noteAsks: string | null }[];
}

export interface ReviewFinding {
  readonly id: string;
  readonly level: string;
  readonly levelWords: string;
  readonly name: string;
  readonly sentence: string;
  readonly limits: readonly string[];
  readonly ruleBookVersion: string;
  readonly raisedForRisk: boolean;
  readonly since: string;
}

export interface ReviewPhoto {
  readonly id: string;
  readonly at: string;
  /** Measured, or why not. */
  readonly state: string;
  readonly numbers: readonly string[];
  /** Address of the picture; null where there is none to show. */
  readonly picture: string | null;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Pen lines in pixels of the picture; what was not found has none. */
  readonly lines: readonly { readonly name: string; readonly path: string }[];
  /** The part of the picture to look at: left, top, width, height; null for all of it. */
  readonly toe: readonly [number, number, number, number] | null;
  /** How long one millimetre of the card is there. */
  readonly pxPerMm: number | null;
}

export interface ReviewCheckIn {
  readonly at: string;
  readonly answers: readonly { readonly name: string; readonly words: string }[];
  /** In the patient's own words. */
  readonly worry: string | null;
}
