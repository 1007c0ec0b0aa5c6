import type { ScoredPhoto } from './run-accuracy';
import type { AccuracySummary } from './summarise';

const percent = (value: number | null): string => (value === null ? '–' : `${(100 * value).toFixed(1)} %`);
const mm = (value: number | null, unit = 'mm'): string => (value === null ? '–' : `${value.toFixed(2)} ${unit}`);

/** The table of the measurement definition, then each class and light, then what went wrong. */
export function printAccuracy(summary: AccuracySummary & { seed: number | null }, scored: readonly ScoredPhoto[]): void {
  const { erythemaArea: area, reach, unrolledArea, unrolledReach, nailFoldMargin: margin, grooveWidth: groove, faults, falseErythema: none } = summary;
  const rows: [string, string, string][] = [
    ['length in the card plane, 95 %', percent(summary.length.p95RelError), '≤ 0.5 % up to 20°, 1 % up to 35°'],
    ['tilt, median error', `${summary.pose.tiltMedianErrorDeg?.toFixed(2) ?? '–'}°`, '≤ 1.5°'],
    ['distance, median error', mm(summary.pose.distanceMedianErrorMm), '≤ 5 mm'],
    ['redness area, median error', percent(area.medianRelError), '≤ 10 %'],
    ['redness area, 95 %', percent(area.p95RelError), '≤ 25 %'],
    ['redness area, k = 2 coverage', percent(area.coverage), '90–98 %'],
    ['redness area, median U', percent(area.medianRelU), ''],
    ['redness not measured', percent(summary.refusedShare), '≤ 15 % (classes I–IV)'],
    ['reach, median error', mm(reach.medianMm), '≤ 0.5 mm'],
    ['reach, 95 %', mm(reach.p95Mm), '≤ 1.5 mm'],
    ['reach, k = 2 coverage', percent(reach.coverage), '90–98 %'],
    ['unrolled area, median and 95 %', `${percent(unrolledArea.medianRelError)}, ${percent(unrolledArea.p95RelError)}`, ''],
    ['unrolled area, k = 2 coverage', percent(unrolledArea.coverage), '90–98 %'],
    ['unrolled reach, median and 95 %', `${mm(unrolledReach.medianMm)}, ${mm(unrolledReach.p95Mm)}`, `where it is known to 2 mm: ${unrolledReach.photos} of ${area.photos}`],
    ['unrolled reach, k = 2 coverage', percent(unrolledReach.coverage), '90–98 %'],
    ['nail-fold margin, RMS', mm(margin.rmsMm), '≤ 0.5 mm'],
    ['groove width, median error', mm(groove.medianMm), '≤ 0.3 mm'],
    ['false redness, 95 %', mm(none.p95Mm2, 'mm²'), '≤ 3 mm²'],
    ['faults caught by their gate', percent(faults.caughtShare), '≥ 95 %'],
    ['clean photos refused', percent(faults.cleanRefusedShare), '≤ 2 %'],
  ];
  console.log(`${summary.photos} photos${summary.seed === null ? '' : `, seed ${summary.seed}`}`);
  for (const row of rows) console.log(`  ${row[0].padEnd(34)} ${row[1].padStart(16)}   ${row[2]}`);
  if (summary.blandAltman) {
    const { biasMm2, sdMm2, limitsMm2 } = summary.blandAltman;
    console.log(`  Bland–Altman, redness area: bias ${biasMm2} mm², SD ${sdMm2} mm², limits ${limitsMm2.join(' … ')} mm²`);
  }
  printGroups('skin class', summary.byItaClass);
  printGroups('light', summary.byLight);
  printWrong(scored);
}

function printGroups(title: string, groups: AccuracySummary['byLight']): void {
  console.log(`\n  ${title.padEnd(14)} photos  refused  area med    95 %   cover   reach med   95 %`);
  for (const [name, group] of Object.entries(groups)) {
    const { erythemaArea: area, reach } = group;
    console.log(
      `  ${name.padEnd(14)} ${String(group.photos).padStart(6)} ${percent(group.refusedShare).padStart(8)} ${percent(area.medianRelError).padStart(9)} ${percent(area.p95RelError).padStart(8)} ${percent(area.coverage).padStart(7)} ${mm(reach.medianMm).padStart(11)} ${mm(reach.p95Mm).padStart(8)}`,
    );
  }
}

/** Photos that answered otherwise than their truth says, worst areas last. */
function printWrong(scored: readonly ScoredPhoto[]): void {
  const gates = scored.filter(({ score }) =>
    score.truth.expectedGate === null ? !score.measured : !score.gates.includes(score.truth.expectedGate) || score.measured,
  );
  if (gates.length > 0) console.log('\n  wrong gate:');
  for (const { score } of gates) console.log(`    ${score.truth.name}: expected ${score.truth.expectedGate ?? 'none'}, got ${score.gates.join(' ') || 'a measurement'}`);
  const worst = scored.filter(({ score }) => score.area).sort((a, b) => off(b) - off(a)).slice(0, 8);
  if (worst.length > 0) console.log('\n  worst areas:');
  for (const { score } of worst) {
    const { truth, error, U } = score.area as NonNullable<typeof score.area>;
    console.log(`    ${score.truth.name} (${score.truth.skinClass}, ${score.truth.light}): ${(truth + error).toFixed(1)} ± ${U.toFixed(1)} for ${truth.toFixed(1)} mm²`);
  }
}

const off = ({ score }: ScoredPhoto): number => (score.area ? Math.abs(score.area.error) / score.area.truth : 0);
