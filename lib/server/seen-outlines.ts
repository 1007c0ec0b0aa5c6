import type { AnalysisJson, OutlinesJson } from '../pipeline/analysis-json';

/** The lines to draw over a photo: as its camera shows the skin. None where the photo was not measured. */
export function seenOutlines({ measured, outlines, outlinesAsSeen }: AnalysisJson): OutlinesJson | null {
  // Analyses of before kept only the straightened ones.
  return measured && outlines ? { ...outlines, ...outlinesAsSeen } : null;
}
