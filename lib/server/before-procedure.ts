import type { RuleRows } from '../edges/db/read-rule-rows';
import type { AnalysisJson } from '../pipeline/analysis-json';
import type { Fact } from '../report/procedure-words';
import { gapReasonWords, trendNumberWords } from '../report/trend-words';

type PhotoRows = RuleRows['photos'][number];

const SHOWN = [
  ['reach', 'reach', 'mm'],
  ['erythemaArea', 'area', 'mm²'],
] as const;

/** What was measured on a photo of the day, in words; null while nothing has been. */
export function measuredWords({ analyses: [analysis] }: PhotoRows): string | null {
  if (analysis?.outcome !== 'measured' || analysis.json === null) return null;
  const { measurements } = JSON.parse(analysis.json) as AnalysisJson;
  return SHOWN.map(([key, name, unit]) => {
    const found = measurements[key];
    return 'notMeasured' in found ? `${name}: none (${gapReasonWords(found.notMeasured)})` : `${name} ${trendNumberWords(found.value)} ± ${trendNumberWords(found.U)} ${unit}`;
  }).join(', ');
}

/**
 * Redness that was there already, for whoever reads the course. It raises and lowers no finding: a toe that was inflamed
 * before is no less inflamed for it.
 */
export function beforeProcedure({ photos }: RuleRows): Fact[] {
  const words = photos.filter(({ kind }) => kind === 'before').map(measuredWords).findLast((one) => one !== null);
  return words ? [{ name: 'Redness before', words }] : [];
}
