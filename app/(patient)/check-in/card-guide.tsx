'use client';

import { GridPaper } from '../../_components/grid-paper';
import { usePatient } from '../_patient/patient-context';
import styles from './card-guide.module.css';

const SQUARES = [
  [28, 28],
  [120, 28],
  [212, 28],
  [28, 100],
  [212, 100],
  [60, 64],
  [180, 64],
] as const;

/** Card, toe and phone drawn with the pen: what the camera should see. */
export function CardGuide() {
  const { messages } = usePatient();
  return (
    <GridPaper>
      <svg className={styles.guide} viewBox="0 0 264 200" role="img" aria-label={messages.photo.guideLabel}>
        <path className={styles.card} d="M12 12 h240 v124 h-70 v-24 a50 50 0 0 0 -100 0 v24 h-70 z" />
        {SQUARES.map(([across, down]) => (
          <rect key={`${across} ${down}`} className={styles.square} x={across - 8} y={down - 8} width="16" height="16" />
        ))}
        <path className={styles.toe} d="M98 196 C94 160 92 130 98 108 C104 84 160 84 166 108 C172 130 170 160 166 196" />
        <path className={styles.nail} d="M112 136 C110 112 114 98 132 97 C150 98 154 112 152 136 C140 143 124 143 112 136 z" />
        <path className={styles.frame} d="M2 24 v-22 h22 M240 2 h22 v22 M262 176 v22 h-22 M24 198 h-22 v-22" />
      </svg>
    </GridPaper>
  );
}
