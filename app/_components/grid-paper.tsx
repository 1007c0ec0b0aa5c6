import type { ReactNode } from 'react';
import styles from './grid-paper.module.css';

/** Millimetre paper: what lies on it was measured or counted. */
export function GridPaper({ children }: { readonly children: ReactNode }) {
  return <div className={styles.grid}>{children}</div>;
}
