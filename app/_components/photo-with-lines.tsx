import type { CSSProperties, ReactNode } from 'react';
import type { ShownPhoto, ShownVersion } from '../../lib/server/shown-episode';
import { type CardWindow, cssMatrix } from './css-matrix';
import styles from './photo-with-lines.module.css';

/** Pen lines with their day. */
export interface DrawnLines {
  readonly id: string;
  readonly date: string;
  readonly lines: ShownVersion['lines'];
  readonly dateAt: ShownVersion['places']['dateAt'];
  /** Six numbers of an SVG matrix, where the photo itself was moved. */
  readonly matrix?: string;
}

interface PhotoWithLinesProps {
  readonly photo: ShownPhoto;
  readonly window: CardWindow;
  /** Whose pen lines are drawn, each with its date; the last is the newest and the only unbroken one. */
  readonly drawn: readonly DrawnLines[];
  /** A second photo over the first, from the left up to this share of the width. */
  readonly over?: { readonly photo: ShownPhoto; readonly share: number };
  /** On a page that is printed: pictures further down are there from the start. */
  readonly eager?: boolean;
  /** In a strip: no scale, no date, and the words stand beside it. */
  readonly small?: boolean;
  /** All lines broken, and no date: what lies over them counts. */
  readonly broken?: boolean;
  /** More to draw, in the card's millimetres. */
  readonly children?: ReactNode;
}

/** A photo laid flat on the card's millimetres, with pen lines over it. */
export function PhotoWithLines({ photo, window, drawn, over, small = false, broken = false, eager = false, children }: PhotoWithLinesProps) {
  const { widthMm, heightMm } = window;
  return (
    <div className={styles.frame} style={{ aspectRatio: `${widthMm} / ${heightMm}` }}>
      <Picture photo={photo} window={window} unspoken={small} eager={eager} />
      {over === undefined ? null : (
        <div className={styles.over} style={{ clipPath: `inset(0 ${100 - over.share}% 0 0)` }}>
          <Picture photo={over.photo} window={window} unspoken={small} eager={eager} />
        </div>
      )}
      {over === undefined ? null : <div className={styles.edge} style={{ left: `${over.share}%` }} />}
      <svg className={styles.lines} viewBox={`${window.acrossMm} ${window.downMm} ${widthMm} ${heightMm}`} aria-hidden="true" focusable="false">
        {drawn.map((one, at) => (
          <Lines key={one.id} one={one} older={broken || at < drawn.length - 1} dateSide={small || broken ? null : sideOf(one, drawn)} />
        ))}
        {small || photo.cardFromView === null ? null : <ScaleBar window={window} />}
        {children}
      </svg>
    </div>
  );
}

function ScaleBar({ window: { acrossMm, downMm, heightMm } }: { readonly window: CardWindow }) {
  const bar = `M${acrossMm + 2} ${downMm + heightMm - 2.6}v1.2v-0.6h10v-0.6v1.2`;
  return (
    <>
      <path className={styles.halo} d={bar} />
      <path className={styles.pen} d={bar} />
      <text className={styles.date} textAnchor="middle" x={acrossMm + 7} y={downMm + heightMm - 3}>
        10 mm
      </text>
    </>
  );
}

/** Pictures are laid out at this scale, and the layer as a whole is fitted to its frame by the style sheet. */
const PX_PER_MM = 10;

function Picture({ photo, window, unspoken, eager }: { readonly photo: ShownPhoto; readonly window: CardWindow; readonly unspoken: boolean; readonly eager: boolean }) {
  const loading = eager ? 'eager' : 'lazy';
  const { picture, size, cardFromView, date, day, state } = photo;
  if (picture === null || size === null) return <p className={styles.none}>No picture can be shown.</p>;
  const words = unspoken ? '' : `Toe on ${date}, day ${day}; ${state}`;
  // Not laid flat where the card was not found: then it is shown as it came.
  if (cardFromView === null) return <img className={styles.asItCame} src={picture} alt={words} loading={loading} />;
  const flat = { width: size.widthPx, height: size.heightPx, transform: cssMatrix(cardFromView, window, PX_PER_MM) };
  return (
    <div className={styles.layer} style={{ '--width': `${PX_PER_MM * window.widthMm}px` } as CSSProperties}>
      <img className={styles.flat} src={picture} alt={words} loading={loading} style={flat} />
    </div>
  );
}

type Side = 'middle' | 'left' | 'right';

/** Two dates stand on either side of each other. */
function sideOf(one: DrawnLines, drawn: readonly DrawnLines[]): Side {
  const other = drawn.find(({ id }) => id !== one.id);
  if (other === undefined) return 'middle';
  const [own, others] = [one, other].map(({ dateAt }) => dateAt?.[0] ?? 0);
  return own > others || (own === others && one === drawn[0]) ? 'right' : 'left';
}

const BESIDE_MM: Readonly<Record<Side, number>> = { middle: 0, left: -1.5, right: 1.5 };
const ANCHOR = { middle: 'middle', left: 'end', right: 'start' } as const;

/** A page of two photos has room for these; the list beside a case shows all. */
const SHOWN_LINES: Readonly<Partial<Record<ShownVersion['lines'][number]['name'], string>>> = { nailFoldMargin: styles.margin, raw: styles.raw, erythema: styles.redness };

function Lines({ one: { lines, dateAt, date, matrix }, older, dateSide }: { readonly one: DrawnLines; readonly older: boolean; readonly dateSide: Side | null }) {
  return (
    <g className={older ? styles.older : undefined} transform={matrix && `matrix(${matrix})`}>
      {lines.map(({ name, path }) =>
        SHOWN_LINES[name] === undefined ? null : (
          <g key={name}>
            <path className={styles.halo} d={path} />
            <path className={`${styles.pen} ${SHOWN_LINES[name]}`} d={path} />
          </g>
        ),
      )}
      {dateAt === null || dateSide === null ? null : (
        <text className={styles.date} textAnchor={ANCHOR[dateSide]} x={dateAt[0] + BESIDE_MM[dateSide]} y={dateAt[1] + 2.6}>
          {date}
        </text>
      )}
    </g>
  );
}
