import type { ShownMethod } from '../../lib/server/load-method';
import styles from './method.module.css';

type Plot = ShownMethod['sensitivity'][number]['plots'][number]['plot'];

/** One plot on millimetre paper, for eyes only: the table beside it says the same. */
export function SensitivityFigure({ id, measurand, plot }: { readonly id: string; readonly measurand: string; readonly plot: Plot }) {
  const { widthMm, heightMm, baseMm, topMm, leftMm, rightMm } = plot;
  return (
    <figure className={styles.figure}>
      <figcaption>{measurand}</figcaption>
      <svg className={styles.paper} viewBox={`0 0 ${widthMm} ${heightMm}`} aria-hidden="true" focusable="false">
        <defs>
          <pattern id={`${id}-paper`} x={leftMm} y={topMm} width="5" height="5" patternUnits="userSpaceOnUse">
            <path className={styles.fine} d="M1 0V5M2 0V5M3 0V5M4 0V5M0 1H5M0 2H5M0 3H5M0 4H5" />
            <path className={styles.bold} d="M0 0V5M0 0H5" />
          </pattern>
        </defs>
        <rect x={leftMm} y={topMm} width={rightMm - leftMm} height={baseMm - topMm} fill={`url(#${id}-paper)`} />
        <path className={styles.axis} d={`M${leftMm} ${topMm}V${baseMm}H${rightMm}`} />
        {plot.gateMm === null ? null : <path className={styles.gate} d={`M${plot.gateMm} ${topMm}V${baseMm}`} />}
        <path className={styles.stated} d={plot.uPath} />
        {plot.dots.map(({ acrossMm, downMm, refused }, at) => (
          <circle key={at} className={refused ? styles.refused : styles.dot} cx={acrossMm} cy={downMm} r="0.8" />
        ))}
        {plot.valueTicks.map(({ atMm, text }) => (
          <text key={text} className={styles.value} x={leftMm - 1} y={atMm + 0.9}>
            {text}
          </text>
        ))}
        {plot.levelTicks.map(({ atMm, text }, at) => (
          <text key={text} className={styles.level} x={atMm} y={baseMm + (at % 2 === 0 ? 3.4 : 6.4)}>
            {text}
          </text>
        ))}
      </svg>
      <p className={styles.under}>{plot.title}</p>
    </figure>
  );
}
