'use client';

import { useState } from 'react';
import type { ReviewPhoto } from '@/lib/server/review-case';
import { Button } from '../../_components/button';
import styles from './review.module.css';
import { useLetters } from './use-letters';

const LINE_WORDS: Readonly<Record<string, string>> = {
  erythema: 'edge of the redness',
  raw: 'raw area',
  macerated: 'soggy skin',
  nailFoldMargin: 'nail-fold margin',
  referenceSkin: 'skin taken as reference',
};

/** The newest photos with the pen lines that were measured on them. */
export function PhotoView({ photos }: { readonly photos: readonly ReviewPhoto[] }) {
  const [at, setAt] = useState(0);
  const [lines, setLines] = useState(true);
  const [whole, setWhole] = useState(false);
  const step = (by: number) => setAt((now) => Math.min(photos.length - 1, Math.max(0, now + by)));
  useLetters({ '[': () => step(1), ']': () => step(-1), p: () => setLines((on) => !on), w: () => setWhole((on) => !on) });
  const photo = photos.at(at);
  if (photo === undefined) return <p className={styles.part}>No photo has come.</p>;
  return (
    <section className={styles.part} aria-label="Photo">
      <Picture photo={photo} lines={lines} whole={whole} />
      <p>
        {photo.at}: {photo.state}. {photo.numbers.join('; ')}
      </p>
      <div className={styles.tools}>
        <Button aria-pressed={lines} onClick={() => setLines(!lines)}>
          Pen lines <kbd>P</kbd>
        </Button>
        <Button aria-pressed={whole} onClick={() => setWhole(!whole)}>
          Whole picture <kbd>W</kbd>
        </Button>
        <Button disabled={at >= photos.length - 1} onClick={() => step(1)}>
          Older <kbd>[</kbd>
        </Button>
        <Button disabled={at === 0} onClick={() => step(-1)}>
          Newer <kbd>]</kbd>
        </Button>
        <span className={styles.small}>
          {at + 1} of {photos.length}
        </span>
      </div>
    </section>
  );
}

function Picture({ photo, lines, whole }: { readonly photo: ReviewPhoto; readonly lines: boolean; readonly whole: boolean }) {
  const { picture, widthPx, heightPx, toe, pxPerMm } = photo;
  if (picture === null) return <p className={styles.noPicture}>There is no picture of this one.</p>;
  const box = toe === null || whole ? [0, 0, widthPx, heightPx] : toe;
  const drawn = lines ? photo.lines : [];
  // Half a millimetre of pen on the skin, whatever the size of the picture.
  const pen = (pxPerMm ?? widthPx / 100) * 0.35;
  const said = drawn.map(({ name }) => LINE_WORDS[name] ?? name).join(', ');
  return (
    <figure className={styles.figure}>
      <svg className={styles.picture} viewBox={box.join(' ')} role="img" aria-label={`Photo of ${photo.at}. Pen lines: ${said === '' ? 'none' : said}.`}>
        <image href={picture} width={widthPx} height={heightPx} />
        {drawn.map(({ name, path }) => (
          <g key={name} className={styles.penLine} data-line={name} style={{ strokeWidth: pen, strokeDasharray: dashesOf(name, pen) }}>
            <path className={styles.halo} d={path} style={{ strokeWidth: pen * 2.4 }} />
            <path d={path} />
          </g>
        ))}
      </svg>
      {drawn.length === 0 ? null : (
        <figcaption className={styles.legend}>
          {drawn.map(({ name }) => (
            <span key={name}>
              <svg className={styles.sample} viewBox="0 0 32 6" aria-hidden="true">
                <path className={styles.penLine} data-line={name} d="M1 3H31" style={{ strokeWidth: 2, strokeDasharray: dashesOf(name, 2) }} />
              </svg>
              {LINE_WORDS[name] ?? name}
            </span>
          ))}
        </figcaption>
      )}
    </figure>
  );
}

/** Each line has a pattern of its own: it is told apart without any colour. */
function dashesOf(name: string, pen: number): string | undefined {
  const patterns: Readonly<Record<string, readonly number[]>> = { nailFoldMargin: [5, 3], raw: [5, 2, 0.1, 2], macerated: [0.1, 2.2], referenceSkin: [0.1, 4] };
  return patterns[name]?.map((part) => part * pen).join(' ');
}
