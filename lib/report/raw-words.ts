import type { Trend } from '../trend/describe-trend';
import { trendDayWords, trendNumberWords } from './trend-words';

const NOT_PROJECTED = {
  tooFewPhotos: 'No dry date is projected: too few raw areas since the peak, five are needed.',
  notShrinking: 'No dry date is projected: the raw area does not shrink fast enough to name one.',
  alreadyClosed: 'No dry date is projected: the newest raw area is below a twentieth of its peak.',
} as const;

/**
 * What the course of the raw area comes to: share lost since the peak, the edge's advance, and the projected dry date.
 *
 * @param trend of the whole course
 * @returns sentences with their intervals and doubts; they describe, they do not judge
 * @example rawWords(describeTrend([]))[0] // 'No dry date is projected: too few raw areas since the peak, five are needed.'
 */
export function rawWords({ series, projectedDry, linearAdvanceMm }: Trend): string[] {
  const { percentReductionFromPeak: lost, peak } = series.rawArea;
  const sentences: string[] = [];
  if (lost !== null && peak) sentences.push(`Raw area: ${trendNumberWords(lost)} % below its peak of ${trendNumberWords(peak.value)} mm² on ${trendDayWords(peak.day)}.`);
  if (linearAdvanceMm) {
    const { value, perDay } = linearAdvanceMm;
    sentences.push(`Its edge moved in by ${value.toFixed(2)} mm since then, ${perDay.toFixed(3)} mm a day (Gilman; understates a long thin groove).`);
  }
  if ('notProjected' in projectedDry) return [...sentences, NOT_PROJECTED[projectedDry.notProjected]];
  const { fromDay, day, toDay } = projectedDry;
  const until = toDay === null ? 'no upper end within reach' : trendDayWords(toDay);
  return [...sentences, `If it went on as it does, dry about ${trendDayWords(day)} (95 % interval ${trendDayWords(fromDay)} to ${until}).`];
}
