import type { Measurand } from '../measure/measure-input';
import { NOT_MEASURED_SENTENCE } from '../photo/reasons';
import type { AnalysisJson } from '../pipeline/analysis-json';
import type { SkinDifference } from '../pipeline/compare-skin';
import type { VisitChange } from '../pipeline/compare-visits';
import { isMeasured, type Measurement } from '../result';

const LABELS: readonly (readonly [Measurand, string, string])[] = [
  ['erythemaArea', 'redness area', 'mm²'],
  ['reach', 'reach from the nail-fold margin', 'mm'],
  ['reachP95', 'reach, 95 % of the edge', 'mm'],
  ['proximalReach', 'reach toward the ankle', 'mm'],
  ['unrolledArea', 'redness area, unrolled', 'mm²'],
  ['unrolledReach', 'reach, unrolled', 'mm'],
  ['rednessDeltaEi', 'redness, erythema index', 'EI'],
  ['rednessDeltaA', 'redness, a*', ''],
  ['rednessLoad', 'redness load', 'EI·mm²'],
  ['grooveWidth', 'groove width, mean', 'mm'],
  ['grooveWidthMax', 'groove width, largest', 'mm'],
  ['rawArea', 'raw area', 'mm²'],
  ['maceratedArea', 'soggy white skin', 'mm²'],
  ['foldStripArea', 'strip of fold beside the margin', 'mm²'],
  ['rawBeyondMargin', 'raw tissue beyond the margin', 'mm'],
  ['rawRedShare', 'raw area, red share', '%'],
  ['rawYellowShare', 'raw area, yellow share', '%'],
  ['rawDarkShare', 'raw area, dark share', '%'],
  ['foldBulge', 'treated fold stands out by', 'mm'],
  ['foldSeenShare', 'fold turned to the camera', '%'],
];

/** One photo's result in sentences, for a terminal. */
export function summaryText(result: AnalysisJson, changes: readonly VisitChange[], differences: readonly SkinDifference[] = []): string {
  const lines = [result.photo, `  taken ${result.capturedAt ?? 'at an unknown time'}, method ${result.methodVersion}`];
  for (const reason of result.reasons) lines.push(`  NOT MEASURED (${reason.gate}): ${reason.advice}`);
  if (result.card) {
    const { tiltDeg, distanceMm, pxPerMm, fiducials, printConfirmed } = result.card;
    lines.push(`  card: ${fiducials} fiducials, tilt ${tiltDeg.toFixed(0)}°, ${(distanceMm / 10).toFixed(0)} cm away, ${pxPerMm.toFixed(1)} px/mm${printConfirmed ? '' : ', print scale NOT checked (give --bar-mm)'}`);
  }
  if (result.measured) {
    for (const [key, label, unit] of LABELS) lines.push(`  ${label.padEnd(34)} ${valueText(result.measurements[key], unit)}`);
    lines.push('  (± is the expanded uncertainty, k = 2; lengths and areas in the plane of the card)');
  }
  for (const change of changes) lines.push(`  since ${change.photo}: ${changeText(change)}`);
  for (const difference of differences) lines.push(`  since ${difference.photo}: ${differenceText(difference)}`);
  return lines.join('\n');
}

/** Finding nothing is told together with what could have been found. */
function differenceText({ redderMm2, reachMm, leastEi }: SkinDifference): string {
  const least = `differences from ${leastEi.toFixed(1)} EI on can be told`;
  if (reachMm === null) return `no place at the fold stands out as redder; that does not show that there is none (${least})`;
  return `redder over ${redderMm2.toFixed(0)} mm², out to ${reachMm.toFixed(1)} mm from the margin (${least})`;
}

function valueText(measurement: Measurement, unit: string): string {
  if (!isMeasured(measurement)) return NOT_MEASURED_SENTENCE[measurement.notMeasured];
  return `${measurement.value.toFixed(1)} ± ${measurement.U.toFixed(1)} ${unit}`;
}

function changeText({ measurand, difference, smallestDetectable, unit }: VisitChange): string {
  const seen = Math.abs(difference) >= smallestDetectable ? 'a change that can be seen' : 'less than the smallest change that can be seen';
  return `${measurand} ${difference >= 0 ? '+' : '−'}${Math.abs(difference).toFixed(1)} ${unit}, ${seen} (${smallestDetectable.toFixed(1)} ${unit})`;
}
