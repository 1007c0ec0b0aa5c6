import type { ReactNode } from 'react';
import styles from './notice.module.css';

interface NoticeProps {
  /** What it is about, in words: the frame alone says nothing. */
  readonly title?: ReactNode;
  /** Paper on ink, and read out at once. For advice that cannot wait. */
  readonly urgent?: boolean;
  /** Read out when it appears or changes, without taking the focus. */
  readonly live?: boolean;
  readonly children?: ReactNode;
}

/** A note pinned to the page. */
export function Notice({ title, urgent = false, live = false, children }: NoticeProps) {
  const role = urgent ? 'alert' : live ? 'status' : undefined;
  return (
    <div className={urgent ? `${styles.notice} ${styles.urgent}` : styles.notice} role={role}>
      {title === undefined ? null : <p className={styles.title}>{title}</p>}
      {children}
    </div>
  );
}
