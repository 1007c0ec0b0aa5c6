import { ANTIBIOTIC_NO_BETTER } from './rules/antibiotic-no-better';
import { BLEEDING } from './rules/bleeding';
import { BONE_FELT } from './rules/bone-felt';
import { CANNOT_JUDGE } from './rules/cannot-judge';
import { DRY } from './rules/dry';
import { DUSKY_TOE } from './rules/dusky-toe';
import { LATE } from './rules/late';
import { MACERATED } from './rules/macerated';
import { OVER_GRANULATION } from './rules/over-granulation';
import { PAIN_RISING } from './rules/pain-rising';
import { PURULENT } from './rules/purulent';
import { REACH_MILD } from './rules/reach-mild';
import { REACH_MODERATE } from './rules/reach-moderate';
import { RELAPSE } from './rules/relapse';
import { SILENT } from './rules/silent';
import { SPIKE_SUSPECT } from './rules/spike-suspect';
import { SPREADING } from './rules/spreading';
import { SPREADING_PROXIMAL } from './rules/spreading-proximal';
import { STALLED } from './rules/stalled';
import { STREAK_OR_FEVER } from './rules/streak-or-fever';
import type { Rule } from './view';

/** In the order of judgement: relapse sees an earlier dryness, dry comes before late, and silent sees what is open. */
export const ALL_RULES: readonly Rule[] = [
  REACH_MODERATE,
  REACH_MILD,
  SPREADING,
  SPREADING_PROXIMAL,
  STREAK_OR_FEVER,
  DUSKY_TOE,
  BLEEDING,
  PURULENT,
  PAIN_RISING,
  STALLED,
  SPIKE_SUSPECT,
  BONE_FELT,
  MACERATED,
  OVER_GRANULATION,
  ANTIBIOTIC_NO_BETTER,
  RELAPSE,
  DRY,
  LATE,
  CANNOT_JUDGE,
  SILENT,
];
