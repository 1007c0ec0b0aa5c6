import type { EpisodeRows } from '../edges/db/read-episode-rows';
import type { AnalysisJson, OutlinesJson } from '../pipeline/analysis-json';
import type { KeptOutlines } from './measure-again';

/** The lines to draw over a photo: as its camera shows the skin. None where the photo was not measured. */
export function seenOutlines({ measured, outlines, outlinesAsSeen }: AnalysisJson): OutlinesJson | null {
  // Analyses of before kept only the straightened ones.
  return measured && outlines ? { ...outlines, ...outlinesAsSeen } : null;
}

/** The same with what a person drew last. */
export function newestOutlines({ analyses: [analysis], outlines: [drawn] }: EpisodeRows['photos'][number]): OutlinesJson | null {
  const own = analysis?.json ? seenOutlines(JSON.parse(analysis.json) as AnalysisJson) : null;
  return own && { ...own, ...(drawn ? (JSON.parse(drawn.outlines) as KeptOutlines).outlinesAsSeen : {}) };
}
