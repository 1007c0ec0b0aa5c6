import type { ShownPlot } from '../../lib/server/shown-episode';
import { DataTable } from './data-table';
import styles from './trend-plot.module.css';

/**
 * One series on millimetre paper, with the same in sentences and as a table. The drawing is for eyes only: everything
 * in it is in the words beside it.
 */
export function TrendPlot({ shown }: { readonly shown: ShownPlot }) {
  const { id, title, unit, sentences, more, rows } = shown;
  return (
    <figure className={styles.figure} aria-labelledby={`${id}-title`}>
      <figcaption className={styles.title} id={`${id}-title`}>
        {title} <span className={styles.unit}>{unit}</span>
      </figcaption>
      <Drawing shown={shown} />
      <ul className={styles.sentences}>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <details className={styles.details}>
        <summary aria-label={`${title} as a table`}>As a table</summary>
        {more.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <DataTable
          caption={`${title}: every value and every gap`}
          captionUnseen
          columns={['Day', 'Value', 'k = 2', 'Why none']}
          rows={rows.map(({ day, value, U, note }, at) => ({ key: `${day} ${at}`, cells: [day, value, U, note] }))}
        />
      </details>
    </figure>
  );
}

const CAP = 0.8;

function Drawing({ shown: { id, plot } }: { readonly shown: ShownPlot }) {
  const { widthMm, heightMm, baseMm, topMm, leftMm } = plot;
  const right = plot.dayTicks[plot.dayTicks.length - 1].atMm;
  return (
    <svg className={styles.paper} viewBox={`0 0 ${widthMm} ${heightMm}`} aria-hidden="true" focusable="false">
      <defs>
        <pattern id={`${id}-paper`} x={leftMm} y={topMm} width="5" height="5" patternUnits="userSpaceOnUse">
          <path className={styles.fine} d="M1 0V5M2 0V5M3 0V5M4 0V5M0 1H5M0 2H5M0 3H5M0 4H5" />
          <path className={styles.bold} d="M0 0V5M0 0H5" />
        </pattern>
      </defs>
      <rect x={leftMm} y={topMm} width={right - leftMm} height={baseMm - topMm} fill={`url(#${id}-paper)`} />
      <path className={styles.axis} d={`M${leftMm} ${topMm}V${baseMm}H${right}`} />
      {plot.valueTicks.map(({ atMm, text }) => (
        <text key={text} className={styles.value} x={leftMm - 1.2} y={atMm + 1.1}>
          {text}
        </text>
      ))}
      {plot.dayTicks.map(({ atMm, text }) => (
        <text key={text} className={styles.day} x={atMm} y={baseMm + 6.5}>
          {text}
        </text>
      ))}
      {plot.events.map(({ acrossMm, letter, row }) => (
        <g key={`${letter}${acrossMm}`}>
          <path className={styles.event} d={`M${acrossMm} ${topMm + 1 + 4 * row}V${baseMm}`} />
          <text className={styles.letter} x={acrossMm} y={topMm - 1 + 4 * row}>
            {letter}
          </text>
        </g>
      ))}
      {plot.gapsMm.map((atMm, at) => (
        <path key={at} className={styles.gap} d={`M${atMm - 1} ${baseMm + 0.8}l2 2m0 -2l-2 2`} />
      ))}
      {plot.points.map(({ acrossMm, whisker }, at) =>
        whisker === null ? null : (
          <path
            key={at}
            className={styles.whisker}
            d={`M${acrossMm} ${whisker.toMm}V${whisker.fromMm}M${acrossMm - CAP} ${whisker.fromMm}h${2 * CAP}${whisker.cutAtZero ? '' : `M${acrossMm - CAP} ${whisker.toMm}h${2 * CAP}`}`}
          />
        ),
      )}
      {plot.lines.map((path) => (
        <path key={path} className={styles.line} d={path} />
      ))}
      {plot.points.map(({ acrossMm, downMm }, at) => (
        <circle key={at} className={styles.point} cx={acrossMm} cy={downMm} r="0.9" />
      ))}
    </svg>
  );
}
