import type { ReactNode } from 'react';
import styles from './page.module.css';

interface PageProps {
  /** Whose page it is: the clinic's name. */
  readonly name: ReactNode;
  /** Beside the name: a date, a language switch. */
  readonly aside?: ReactNode;
  readonly foot?: ReactNode;
  readonly children: ReactNode;
}

/** One sheet of paper: a head with the clinic's name, one column, a foot. */
export function Page({ name, aside, foot, children }: PageProps) {
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <span className={styles.name}>{name}</span>
        {aside}
      </header>
      <main className={styles.main}>{children}</main>
      {foot === undefined ? null : <footer className={styles.foot}>{foot}</footer>}
    </div>
  );
}
