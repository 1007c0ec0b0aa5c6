import type { ReachTrend } from '@/lib/server/review-row';
import styles from './review.module.css';

const [WIDTH, HEIGHT, BASE] = [120, 40, 36];
/** The drawing reaches at least so far up, so that small reaches look small. */
const LEAST_TOP_MM = 8;

/** Reach over the days in pen: zero at the bottom, the band of each value as a stroke, nothing where nothing was measured. */
export function ReachLine({ reach }: { readonly reach: ReachTrend }) {
  const { points, stretches, refusedDays, toDay } = reach;
  const top = Math.max(LEAST_TOP_MM, ...points.map(({ mm, U }) => mm + U));
  const across = (day: number) => 2 + (day / Math.max(1, toDay)) * (WIDTH - 4);
  const down = (mm: number) => BASE - (Math.max(0, mm) / top) * (BASE - 2);
  const lines = stretches.map(([from, to]) => points.filter(({ day }) => day >= from && day <= to).map(({ day, mm }) => `${across(day)} ${down(mm)}`).join('L'));
  return (
    <svg className={styles.reach} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path className={styles.axis} d={`M2 ${BASE}H${WIDTH - 2}`} />
      {points.map(({ day, mm, U }) => (
        <path key={day} className={styles.band} d={`M${across(day)} ${down(mm - U)}V${down(mm + U)}`} />
      ))}
      {lines.map((line, at) => (line.includes('L') ? <path key={at} className={styles.pen} d={`M${line}`} /> : null))}
      {points.map(({ day, mm }) => (
        <circle key={day} className={styles.dot} cx={across(day)} cy={down(mm)} r="1.6" />
      ))}
      {refusedDays.map((day, at) => (
        <path key={at} className={styles.pen} d={`M${across(day) - 2} ${BASE - 2}l4 4m0 -4l-4 4`} />
      ))}
    </svg>
  );
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** The same in words, for everybody. */
export function reachWords({ points, refusedDays }: ReachTrend): string {
  const newest = points.at(-1);
  const refused = refusedDays.length > 0 ? `, ${refusedDays.length} without` : '';
  if (newest === undefined) return refusedDays.length > 0 ? `reach: no value in ${counted(refusedDays.length, 'photo')}` : 'reach: no value yet';
  return `reach ${newest.mm.toFixed(1)} ± ${newest.U.toFixed(1)} mm on day ${newest.day.toFixed(0)}; ${counted(points.length, 'value')}${refused}`;
}
