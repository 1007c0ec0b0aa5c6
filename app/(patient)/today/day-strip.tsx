'use client';

import type { PatientState } from '../../../lib/care/patient-contract';
import { scheduleDaysSince } from '../../../lib/care/schedule-day';
import { usePatient } from '../_patient/patient-context';
import styles from './day-strip.module.css';

const FEWEST_DAYS = 7;
const [WIDTH, HEIGHT, BASE] = [160, 40, 26];
/** Of each day; below this not every number has room. */
const LEAST_FOR_NUMBER = 12;

/** The days since the procedure as a pen line on the paper: a stroke for each check-in, a ring around today. */
export function DayStrip({ day, state }: { readonly day: number; readonly state: PatientState }) {
  const { messages } = usePatient();
  const days = Math.max(FEWEST_DAYS, day + 1);
  const strokes = state.received.map(({ at }) => scheduleDaysSince(state.procedureAt, at, state.timeZone));
  // As wide as the page however many days there are: the numbers keep their size, and later only every fifth is written.
  const dayWidth = WIDTH / (days + 1);
  const place = (one: number) => dayWidth * (one + 0.5);
  const every = dayWidth < LEAST_FOR_NUMBER ? 5 : 1;
  const isWritten = (one: number) => one === day || (one % every === 0 && (every === 1 || Math.abs(one - day) * dayWidth > LEAST_FOR_NUMBER));
  return (
    <svg className={styles.strip} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={messages.today.stripLabel(strokes.length, day)}>
      <path className={styles.line} d={`M2 ${BASE} H${place(day)}`} />
      <path className={styles.ahead} d={`M${place(day)} ${BASE} H${WIDTH - 2}`} />
      {Array.from({ length: days + 1 }, (_, one) => (
        <g key={one}>
          <path className={styles.tick} d={`M${place(one)} ${BASE - 2} v4`} />
          {isWritten(one) ? (
            <text className={styles.number} x={place(one)} y={HEIGHT - 2}>
              {one}
            </text>
          ) : null}
        </g>
      ))}
      {strokes.map((one, index) => (
        <path key={index} className={styles.stroke} d={`M${place(one) - 2} ${BASE - 4} l4 -13`} />
      ))}
      <circle className={styles.today} cx={place(day)} cy={BASE} r="5" />
    </svg>
  );
}
