import type { CohortScores } from './score-cohorts';
import type { Share } from './wilson-interval';

const percent = ({ share, from, to, of }: Share, digits = 1): string => {
  const shown = [share, from, to].map((one) => (100 * one).toFixed(digits));
  return `${shown[0]} % (${shown[1]}–${shown[2]}, n ${of})`;
};
const shown = (value: number | null, digits = 0): string => (value === null ? '–' : value.toFixed(digits));

/** The table for people; everything in it is in the JSON too. */
export function printCohorts({ seed, episodes, clean, spreadingFrom2MmPerDay, rules, byItaClass, classGap }: CohortScores): void {
  console.log(`${episodes} invented courses, seed ${seed}; intervals are Wilson's, 95 %\n`);
  console.log(`clean courses: false findings per 100: redness ${clean.falseRedPer100.toFixed(2)} (bar 2), now ${clean.falseNowPer100.toFixed(2)} (bar 1), all ${clean.falseAnyPer100.toFixed(2)} (bar 10)`);
  console.log(`  with a false redness flag ${percent(clean.withFalseRed, 2)}, a false now ${percent(clean.withFalseNow, 2)}, any ${percent(clean.withAnyFalse, 2)}`);
  console.log(`  by level ${counts(clean.falseByLevelPer100)}; by rule ${counts(clean.falseByRulePer100)}`);
  console.log(`  now from a warning tapped by mistake ${clean.nowFromWrongTapsPer100.toFixed(2)}; silent and cannot-judge, as sent, ${clean.administrativePer100.toFixed(1)}`);
  console.log(`\nspreading ≥ 2 mm/day, by the second visit with a reach after 2 mm of true growth: ${percent(spreadingFrom2MmPerDay.bySecondPhoto)} (bar 98 %)`);
  console.log(`  visits counted on which redness could not be seen: ${percent(spreadingFrom2MmPerDay.bySecondUsablePhoto)}; retakes of one visit counted: ${percent(spreadingFrom2MmPerDay.bySecondRetake)}`);
  console.log('\nrule                  caught                         photos 50/95 %   hours 50/95 %');
  for (const [rule, one] of Object.entries(rules)) {
    console.log(`${rule.padEnd(22)}${percent(one.caught).padEnd(31)}${shown(one.medianDelayPhotos)} / ${shown(one.p95DelayPhotos).padEnd(13)}${shown(one.medianDelayHours)} / ${shown(one.p95DelayHours)}`);
  }
  console.log('\nskin class     spreading, second photo        redness could not be seen too  false redness per 100');
  for (const [name, one] of Object.entries(byItaClass)) {
    console.log(`${name.padEnd(15)}${percent(one.bySecondPhoto).padEnd(31)}${percent(one.bySecondUsablePhoto).padEnd(31)}${one.falseRedPer100.toFixed(2)}`);
  }
  const { points, from, to, byChancePoints } = classGap;
  console.log(`worst class behind best: ${points.toFixed(1)} points (${from.toFixed(1)}–${to.toFixed(1)}; bar 3); classes that are all alike would show ${byChancePoints.toFixed(1)} by chance`);
}

const counts = (all: Record<string, number>): string => Object.entries(all).map(([name, per100]) => `${name} ${per100.toFixed(2)}`).join(', ') || 'none';
