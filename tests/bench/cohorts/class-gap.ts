import type { Share } from './wilson-interval';

/** Mean range of six standard normal numbers. Source: Tippett 1925, Biometrika 17:364–87, table X. */
const MEAN_RANGE_OF_SIX = 2.534;

export interface ClassGap {
  /** Best less worst, in percentage points. */
  readonly points: number;
  /** Its 95 % interval, best and worst taken as two shares that were named beforehand. */
  readonly from: number;
  readonly to: number;
  /** What six classes of this size would show although all were caught alike. */
  readonly byChancePoints: number;
}

/** How far the worst of six classes lies behind the best. Interval: Newcombe 1998, Stat Med 17:873–90, method 10. */
export function classGap(classes: readonly Share[]): ClassGap {
  if (classes.length !== 6) throw new Error(`The mean range is that of six classes, received ${classes.length}.`);
  const [worst, best] = [Math.min, Math.max].map((pick) => classes.find(({ share }) => share === pick(...classes.map((one) => one.share)))) as [Share, Share];
  const gap = best.share - worst.share;
  const all = classes.reduce((sum, { hits }) => sum + hits, 0) / classes.reduce((sum, { of }) => sum + of, 0);
  const meanVariance = classes.reduce((sum, { of }) => sum + (all * (1 - all)) / of, 0) / classes.length;
  return {
    points: 100 * gap,
    from: 100 * (gap - Math.hypot(best.share - best.from, worst.to - worst.share)),
    to: 100 * (gap + Math.hypot(best.to - best.share, worst.share - worst.from)),
    byChancePoints: 100 * MEAN_RANGE_OF_SIX * Math.sqrt(meanVariance),
  };
}
