'use client';

import { usePatient } from './patient-context';
import { clockFace, secondsLeft } from './countdown';
import { useNow } from './use-now';
import styles from './patient.module.css';

interface PenTimerProps {
  readonly startedAtMs: number;
  readonly minutes: number;
  /** What to do when the time is up; read out then. */
  readonly over: string;
}

const EVERY_MINUTES = 5;

/** Counts down by the phone's clock, so that it is right again after the page was gone. */
export function PenTimer({ startedAtMs, minutes, over }: PenTimerProps) {
  const { messages } = usePatient();
  const left = secondsLeft(startedAtMs, minutes, useNow(500));
  const share = 1 - left / (minutes * 60);
  const said = Math.ceil(left / 60 / EVERY_MINUTES) * EVERY_MINUTES;
  return (
    <div className={styles.timer}>
      <p role="timer" className={styles.clock} aria-label={messages.timer.left(clockFace(left))}>
        {clockFace(left)}
      </p>
      <svg className={styles.penLine} viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
        <line x1="0" y1="2" x2="100" y2="2" className={styles.penLineAll} />
        <line x1="0" y1="2" x2={100 * share} y2="2" className={styles.penLineDone} />
      </svg>
      <p role="status" className={left === 0 ? undefined : styles.unseen}>
        {left === 0 ? over : messages.timer.minutesLeft(Math.min(said, minutes))}
      </p>
    </div>
  );
}
