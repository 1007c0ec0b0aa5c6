'use client';

import { useId, useState } from 'react';
import type { ShownPhoto } from '../../../../lib/server/shown-episode';
import { Button } from '../../../_components/button';
import { PhotoWithLines } from '../../../_components/photo-with-lines';
import { linesLaidOn, linesMovedOnto, movedOnto } from './aligned';
import { cardWindow } from './card-window';
import { drawnOn } from './drawn-on';
import { RedrawPhoto } from './redraw-photo';
import styles from './compare-photos.module.css';

const WAYS = [
  ['side', 'Side by side'],
  ['wipe', 'Wiped across'],
  ['line', 'Earlier pen line on the later photo'],
] as const;
type Way = (typeof WAYS)[number][0];

const canLieFlat = ({ cardFromView }: ShownPhoto): boolean => cardFromView !== null;
const nameOf = ({ day, date, state }: ShownPhoto): string => `Day ${day}, ${date}: ${state}`;

/** A strip of all photos, and any two of them compared in the card's millimetres. */
export function ComparePhotos({ photos, mayRedraw }: { readonly photos: readonly ShownPhoto[]; readonly mayRedraw: boolean }) {
  const flat = photos.filter(canLieFlat);
  const [ids, setIds] = useState<readonly [string, string]>([(flat.at(-2) ?? photos[0]).id, (flat.at(-1) ?? photos[photos.length - 1]).id]);
  const [way, setWay] = useState<Way>('side');
  const [redrawn, setRedrawn] = useState<string | null>(null);
  const pair = photos.filter(({ id }) => ids.includes(id));
  const [earlier, later] = [pair[0], pair[pair.length - 1]];
  const redrawnPhoto = photos.find(({ id }) => id === redrawn);
  const choose = (place: 0 | 1, id: string) => setIds(place === 0 ? [id, later.id] : [earlier.id, id]);
  return (
    <div className={styles.compare}>
      <div className={styles.choices}>
        <PhotoChoice label="Earlier photo" photos={photos} chosen={earlier.id} onChoose={(id) => choose(0, id)} />
        <PhotoChoice label="Later photo" photos={photos} chosen={later.id} onChoose={(id) => choose(1, id)} />
        <WayChoice way={way} onChoose={setWay} />
      </div>
      {redrawnPhoto === undefined ? <Comparison earlier={earlier} later={later} way={way} /> : <RedrawPhoto key={redrawnPhoto.id} photo={redrawnPhoto} window={cardWindow([redrawnPhoto])} onClose={() => setRedrawn(null)} />}
      {mayRedraw && redrawnPhoto === undefined ? (
        <p className={styles.tools}>
          {[...new Set([earlier, later])].filter(({ canRedraw, cardFromView }) => canRedraw && cardFromView !== null).map((photo) => (
            <Button key={photo.id} onClick={() => setRedrawn(photo.id)}>
              Draw an outline of day {photo.day} anew
            </Button>
          ))}
        </p>
      ) : null}
      <Strip photos={photos} shown={[earlier.id, later.id]} onChoose={(id) => choose(1, id)} />
    </div>
  );
}

interface PhotoChoiceProps {
  readonly label: string;
  readonly photos: readonly ShownPhoto[];
  readonly chosen: string;
  readonly onChoose: (id: string) => void;
}

function PhotoChoice({ label, photos, chosen, onChoose }: PhotoChoiceProps) {
  return (
    <label className={styles.choice}>
      <span>{label}</span>
      <select value={chosen} onChange={(event) => onChoose(event.target.value)}>
        {photos.map((photo) => (
          <option key={photo.id} value={photo.id}>
            {nameOf(photo)}
          </option>
        ))}
      </select>
    </label>
  );
}

function WayChoice({ way, onChoose }: { readonly way: Way; readonly onChoose: (way: Way) => void }) {
  const name = useId();
  return (
    <fieldset className={styles.ways}>
      <legend>How they are compared</legend>
      {WAYS.map(([id, words]) => (
        <label key={id} className={styles.way}>
          <input type="radio" name={name} checked={way === id} onChange={() => onChoose(id)} />
          {words}
        </label>
      ))}
    </fieldset>
  );
}

function Comparison({ earlier, later, way }: { readonly earlier: ShownPhoto; readonly later: ShownPhoto; readonly way: Way }) {
  const [share, setShare] = useState(50);
  const [numbers, setNumbers] = useState<Readonly<Record<string, number>>>({});
  const numberOf = ({ id, versions }: ShownPhoto): number => numbers[id] ?? versions[0].number;
  // Every photo's toe lies in the notch in a way of its own: the earlier one is turned and shifted onto the later.
  const moved = movedOnto(earlier, later);
  const window = cardWindow([moved, later]);
  const parted = [earlier, later].find((photo) => !canLieFlat(photo));
  if (way === 'side' || parted || earlier === later) {
    return (
      <>
        {way !== 'side' && parted ? <p>Day {parted.day} shows no card, so the two cannot be laid over one another. They are side by side.</p> : null}
        <div className={styles.pair}>
          {(earlier === later ? [later] : [moved, later]).map((photo) => (
            <figure key={photo.id} className={styles.figure}>
              <PhotoWithLines photo={photo} window={window} drawn={[photo === later ? drawnOn(later, numberOf(later)) : linesMovedOnto(earlier, later, numberOf(earlier))]} />
              <Caption photo={photo} number={numberOf(photo)} onNumber={(number) => setNumbers({ ...numbers, [photo.id]: number })} />
            </figure>
          ))}
        </div>
      </>
    );
  }
  const over = way === 'wipe' ? { photo: moved, share } : undefined;
  return (
    <figure className={styles.figure}>
      <div className={styles.one}>
        <PhotoWithLines photo={later} window={window} drawn={way === 'wipe' ? [] : [linesLaidOn(earlier, later, numberOf(earlier)), drawnOn(later, numberOf(later))]} over={over} />
      </div>
      {over === undefined ? (
        <p>
          Broken line: {earlier.date}. Unbroken line: {later.date}. Dotted: the nail-fold margin. Dashes and dots: the raw area.
        </p>
      ) : (
        <label className={styles.wipe}>
          <span>
            {earlier.date} on the left, {later.date} on the right
          </span>
          <input type="range" min="0" max="100" value={share} aria-valuetext={`${share} % ${earlier.date}`} onChange={(event) => setShare(Number(event.target.value))} />
        </label>
      )}
      {[earlier, later].map((photo) => (
        <Caption key={photo.id} photo={photo} number={numberOf(photo)} onNumber={(number) => setNumbers({ ...numbers, [photo.id]: number })} />
      ))}
    </figure>
  );
}

/** A tilted camera: what lies below the card is seen beside its place, and its line is not. */
const TILT_TO_SAY_DEG = 10;

interface CaptionProps {
  readonly photo: ShownPhoto;
  /** Which of its outlines are shown. */
  readonly number: number;
  readonly onNumber: (number: number) => void;
}

function Caption({ photo: { day, at, state, versions, tiltDeg }, number, onNumber }: CaptionProps) {
  const shown = versions.find((version) => version.number === number) ?? versions[0];
  return (
    <figcaption className={styles.caption}>
      <strong>Day {day}</strong>, {at}: {[state, ...shown.numbers].join('; ')}.{' '}
      {tiltDeg !== null && tiltDeg >= TILT_TO_SAY_DEG ? `The camera leaned ${tiltDeg}°: skin below the card shows beside its place, and its line with it.` : ''}
      {versions.length > 1 ? (
        <label className={styles.version}>
          <span>Outlines of day {day}</span>
          <select value={shown.number} onChange={(event) => onNumber(Number(event.target.value))}>
            {versions.map((version, place) => (
              <option key={version.number} value={version.number}>
                {version.number === 0 ? 'By the program' : `Version ${version.number}, by hand`}
                {place === 0 ? ' (counts)' : ''}
              </option>
            ))}
          </select>
          <span>{shown.words}.</span>
        </label>
      ) : null}
    </figcaption>
  );
}

function Strip({ photos, shown, onChoose }: { readonly photos: readonly ShownPhoto[]; readonly shown: readonly string[]; readonly onChoose: (id: string) => void }) {
  const window = cardWindow(photos);
  return (
    <ol className={styles.strip} aria-label="All photos, oldest first">
      {photos.map((photo) => (
        <li key={photo.id}>
          <button type="button" className={styles.thumb} aria-pressed={shown.includes(photo.id)} onClick={() => onChoose(photo.id)}>
            <PhotoWithLines photo={photo} window={window} drawn={[drawnOn(photo)]} small />
            <span>
              Day {photo.day}
              {shown.includes(photo.id) ? ' · shown above' : ''}
            </span>
            <span className={styles.state}>{photo.state}</span>
          </button>
        </li>
      ))}
    </ol>
  );
}
