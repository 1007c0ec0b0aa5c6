'use client';

import { useEffect, useRef, useState } from 'react';
import type { ShownPhoto } from '../../lib/server/shown-episode';
import { type CardWindow, cssMatrix } from './css-matrix';
import styles from './photo-with-lines.module.css';

interface PhotoWithLinesProps {
  readonly photo: ShownPhoto;
  readonly window: CardWindow;
  /** Whose pen lines are drawn, each with its date; the last is the newest and the only unbroken one. */
  readonly drawn: readonly ShownPhoto[];
  /** A second photo over the first, from the left up to this share of the width. */
  readonly over?: { readonly photo: ShownPhoto; readonly share: number };
  /** In a strip: no scale, no date, and the words stand beside it. */
  readonly small?: boolean;
}

/** A photo laid flat on the card's millimetres, with pen lines over it. */
export function PhotoWithLines({ photo, window, drawn, over, small = false }: PhotoWithLinesProps) {
  const { widthMm, heightMm } = window;
  const [frame, pxPerMm] = useScale(widthMm);
  return (
    <div ref={frame} className={styles.frame} style={{ aspectRatio: `${widthMm} / ${heightMm}` }}>
      <Picture photo={photo} window={window} pxPerMm={pxPerMm} unspoken={small} />
      {over === undefined ? null : (
        <div className={styles.over} style={{ clipPath: `inset(0 ${100 - over.share}% 0 0)` }}>
          <Picture photo={over.photo} window={window} pxPerMm={pxPerMm} unspoken={small} />
        </div>
      )}
      {over === undefined ? null : <div className={styles.edge} style={{ left: `${over.share}%` }} />}
      <svg className={styles.lines} viewBox={`${window.acrossMm} ${window.downMm} ${widthMm} ${heightMm}`} aria-hidden="true" focusable="false">
        {drawn.map((one, at) => (
          <Lines key={one.id} photo={one} older={at < drawn.length - 1} dated={!small} />
        ))}
        {small ? null : <ScaleBar window={window} />}
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
      <text className={styles.date} x={acrossMm + 7} y={downMm + heightMm - 3}>
        10 mm
      </text>
    </>
  );
}

function Picture({ photo, window, pxPerMm, unspoken }: { readonly photo: ShownPhoto; readonly window: CardWindow; readonly pxPerMm: number; readonly unspoken: boolean }) {
  const { picture, size, cardFromView, date, day, state } = photo;
  if (picture === null || size === null) return <p className={styles.none}>No picture can be shown.</p>;
  const words = unspoken ? '' : `Toe on ${date}, day ${day}; ${state}`;
  // Not laid flat where the card was not found: then it is shown as it came.
  const flat = cardFromView && { width: size.widthPx, height: size.heightPx, transform: cssMatrix(cardFromView, window, pxPerMm) };
  return <img className={flat ? styles.flat : styles.asItCame} src={picture} alt={words} loading="lazy" style={flat ?? undefined} />;
}

function Lines({ photo: { lines, date }, older, dated }: { readonly photo: ShownPhoto; readonly older: boolean; readonly dated: boolean }) {
  const pen = older ? `${styles.pen} ${styles.older}` : styles.pen;
  return (
    <g>
      {[lines.redness, lines.margin].map((path, at) =>
        path === null ? null : (
          <g key={at}>
            <path className={styles.halo} d={path} />
            <path className={at === 0 ? pen : `${pen} ${styles.margin}`} d={path} />
          </g>
        ),
      )}
      {lines.dateAt === null || !dated ? null : (
        <text className={styles.date} x={lines.dateAt[0]} y={lines.dateAt[1] + (older ? 5 : 2.4)}>
          {date}
        </text>
      )}
    </g>
  );
}

const FIRST_PX_PER_MM = 8;

/** How many pixels of the screen a millimetre has here. */
function useScale(widthMm: number): [React.RefObject<HTMLDivElement | null>, number] {
  const frame = useRef<HTMLDivElement>(null);
  const [widthPx, setWidthPx] = useState(FIRST_PX_PER_MM * widthMm);
  useEffect(() => {
    if (frame.current === null) return;
    const observer = new ResizeObserver(([{ contentRect }]) => setWidthPx(contentRect.width));
    observer.observe(frame.current);
    return () => observer.disconnect();
  }, []);
  return [frame, widthPx / widthMm];
}
