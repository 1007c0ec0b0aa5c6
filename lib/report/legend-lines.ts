import type { Analysis } from '../pipeline/analysis';
import { isMeasured, type Measurement } from '../result';
import type { PenStyle } from './pen-stroke';

export interface LegendLine {
  readonly text: string;
  /** Pattern of the line it explains. */
  readonly style?: PenStyle;
  readonly accent?: boolean;
  readonly small?: boolean;
}

/**
 * The overlay's legend in the pen alphabet (capitals): date, numbers ± U, or the reasons why there are none.
 *
 * @param analysis one photo's analysis
 * @example legendLines(analysis)[0].text // '2026-03-02 19:32'
 */
export function legendLines(analysis: Analysis): LegendLine[] {
  const taken = analysis.photo.capture.localTime?.slice(0, 16).replace('T', ' ') ?? 'DATE UNKNOWN';
  const lines: LegendLine[] = [{ text: taken }];
  const given = analysis.measurement?.measurements;
  if (!given) {
    lines.push({ text: 'NOT MEASURED' });
    for (const reason of analysis.reasons) lines.push({ text: spaced(reason.gate), small: true });
    return [...lines, PLANE];
  }
  return [
    ...lines,
    { text: `REDNESS AREA ${shown(given.erythemaArea, 'mm²')}`, style: 'solid' },
    { text: `REACH ${shown(given.reach, 'mm')}`, style: 'solid', accent: true },
    { text: 'NAIL-FOLD MARGIN', style: 'dashes' },
    { text: `GROOVE WIDTH ${shown(given.grooveWidth, 'mm')}` },
    { text: `RAW AREA ${shown(given.rawArea, 'mm²')}`, style: 'dashDot' },
    { text: 'NAIL PLATE, SOGGY SKIN', style: 'dots' },
    { text: 'REFERENCE SKIN', style: 'fineDots' },
    PLANE,
  ];
}

/** The definition that every report carries. */
const PLANE: LegendLine = { text: 'IN THE CARD PLANE, ± WITH K = 2, GRID 1 MM', small: true };

function shown(measurement: Measurement, unit: string): string {
  if (!isMeasured(measurement)) return `- ${spaced(measurement.notMeasured)}`;
  return `${measurement.value.toFixed(1)} ± ${measurement.U.toFixed(1)} ${unit}`;
}

/** `contrastTooLow` → `CONTRAST TOO LOW` */
function spaced(id: string): string {
  return id.replace(/([A-Z])/g, ' $1').toUpperCase();
}
