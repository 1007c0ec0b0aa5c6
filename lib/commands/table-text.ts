import type { AnalysisJson } from '../pipeline/analysis-json';
import { isMeasured, type Measurement } from '../result';

/** A file that could not be read as a photo. */
export interface UnreadPhoto {
  readonly photo: string;
  readonly unread: { readonly id: string; readonly sentence: string };
}

/** Several photos as a table: one line each, a dash for what was not measured. */
export function tableText(results: readonly (AnalysisJson | UnreadPhoto)[]): string {
  const cell = (measurement: Measurement) => (isMeasured(measurement) ? `${measurement.value.toFixed(1)} ± ${measurement.U.toFixed(1)}` : '–');
  const rows = results.map((result) =>
    'unread' in result
      ? [result.photo, '', '', '', '', `cannot be read: ${result.unread.sentence}`]
      : [
          result.photo,
          cell(result.measurements.erythemaArea),
          cell(result.measurements.reach),
          cell(result.measurements.grooveWidth),
          cell(result.measurements.rawArea),
          [...result.reasons.map((reason) => reason.gate), ...missingRedness(result)].join(', '),
        ],
  );
  const table = [['photo', 'redness mm²', 'reach mm', 'groove mm', 'raw mm²', 'not measured because'], ...rows];
  const widths = table[0].map((_, i) => Math.max(...table.map((row) => row[i].length)));
  return table.map((row) => row.map((text, i) => text.padEnd(widths[i])).join('  ').trimEnd()).join('\n');
}

function missingRedness(result: AnalysisJson): string[] {
  const redness = result.measurements.erythemaArea;
  return result.measured && !isMeasured(redness) ? [`redness: ${redness.notMeasured}`] : [];
}
