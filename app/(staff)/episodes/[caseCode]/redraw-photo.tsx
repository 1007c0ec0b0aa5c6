'use client';

import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { useRouter } from 'next/navigation';
import type { ShownPhoto } from '../../../../lib/server/shown-episode';
import { Button } from '../../../_components/button';
import { Choice } from '../../../_components/choice';
import type { CardWindow } from '../../../_components/css-matrix';
import { Field } from '../../../_components/field';
import { Notice } from '../../../_components/notice';
import { PhotoWithLines } from '../../../_components/photo-with-lines';
import { drawnOn } from './drawn-on';
import styles from './redraw-photo.module.css';
import { cardPlace, placesOf, pointsAlong, type SetPoint, withPoint } from './set-points';
import { type Outline, useRedraw } from './use-redraw';

const OUTLINES: readonly { readonly value: Outline; readonly label: string }[] = [
  { value: 'erythema', label: 'Edge of the redness' },
  { value: 'nailFoldMargin', label: 'Nail-fold margin' },
  { value: 'raw', label: 'Raw area' },
];
/** A press this near a point takes hold of it. */
const HOLD_MM = 0.9;
const STEP_MM = 0.25;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

interface RedrawProps {
  readonly photo: ShownPhoto;
  readonly window: CardWindow;
  readonly onClose: () => void;
}

/** One outline of one photo drawn anew: points on the photo, a line that the server lays along its edges, and the numbers with it. */
export function RedrawPhoto({ photo, window, onClose }: RedrawProps) {
  const router = useRouter();
  const [newest] = photo.versions;
  const [outline, setOutline] = useState<Outline>('erythema');
  const [points, setPoints] = useState<readonly SetPoint[] | null>(newest.points.erythema ?? []);
  const [reason, setReason] = useState('');
  const { snapped, problem, keep } = useRedraw(photo, outline, points);
  const closed = outline !== 'nailFoldMargin';
  const present = newest.lines.find(({ name }) => name === outline);

  const choose = (value: Outline) => {
    setOutline(value);
    setPoints(newest.points[value] ?? []);
  };
  const save = async () => {
    if (!(await keep(reason))) return;
    onClose();
    router.refresh();
  };

  return (
    <section className={styles.redraw} aria-label={`Draw an outline anew, day ${photo.day}`}>
      <div className={styles.photo}>
        <DrawingBoard photo={photo} window={window} line={snapped?.line ?? null} closed={closed} points={points ?? []} onPoints={setPoints} />
        <p className={styles.small}>Broken lines: as they stand now. Unbroken: as drawn anew. The line goes along the nearest edges of the photo between your points.</p>
      </div>
      <div className={styles.controls}>
        <h3>Draw an outline anew</h3>
        <Choice legend="Which outline" options={OUTLINES} chosen={[outline]} onChoose={choose} wrap />
        <div className={styles.tools}>
          {present === undefined ? null : <Button onClick={() => setPoints(pointsAlong(placesOf(present.path), closed))}>Begin from the line that is there</Button>}
          <Button onClick={() => setPoints([])}>Take all points off</Button>
          {newest.points[outline] === undefined ? null : <Button onClick={() => setPoints(null)}>The program’s own line again</Button>}
        </div>
        <Points points={points ?? []} closed={closed} middle={middleOf(window)} onPoints={setPoints} />
        <div role="status" className={styles.numbers}>
          {problem === '' && snapped === null ? <p>Press on the photo along the edge. Numbers follow at once.</p> : null}
          {problem === '' && snapped !== null ? (
            <>
              <p>{points === null ? 'With the program’s own line:' : 'With this line:'}</p>
              <ul>
                {snapped.numbers.map((number) => (
                  <li key={number}>{number}</li>
                ))}
              </ul>
              {snapped.because === '' ? null : <p className={styles.small}>Where ± comes from: {snapped.because}.</p>}
            </>
          ) : null}
        </div>
        {problem === '' ? null : <Notice live title={problem} />}
        <Field label="Why it is drawn anew" value={reason} onChange={setReason} maxLength={2000} />
        <div className={styles.tools}>
          <Button disabled={snapped === null} onClick={() => void save()}>
            Keep this version
          </Button>
          <Button look="plain" onClick={onClose}>
            Leave without keeping
          </Button>
        </div>
        <p className={styles.small}>Every version stays. Course and findings use the newest one; the rules are asked again within seconds.</p>
      </div>
    </section>
  );
}

const middleOf = ({ acrossMm, downMm, widthMm, heightMm }: CardWindow): SetPoint => ({ acrossMm: acrossMm + widthMm / 2, downMm: downMm + heightMm / 2, held: true });

interface BoardProps {
  readonly photo: ShownPhoto;
  readonly window: CardWindow;
  readonly line: readonly (readonly [number, number])[] | null;
  readonly closed: boolean;
  readonly points: readonly SetPoint[];
  readonly onPoints: (points: readonly SetPoint[]) => void;
}

/** The photo to press on: a press beside all points sets one, a press on a point takes it along. */
function DrawingBoard({ photo, window, line, closed, points, onPoints }: BoardProps) {
  const board = useRef<HTMLDivElement>(null);
  const [moved, setMoved] = useState<number | null>(null);
  const placeOf = (event: PointerEvent) => cardPlace({ x: event.clientX, y: event.clientY }, (board.current as HTMLDivElement).getBoundingClientRect(), window);

  const press = (event: PointerEvent) => {
    const place = placeOf(event);
    const near = points.findIndex((point) => Math.hypot(point.acrossMm - place.acrossMm, point.downMm - place.downMm) < HOLD_MM);
    event.currentTarget.setPointerCapture(event.pointerId);
    if (near >= 0) return setMoved(near);
    const more = withPoint(points, { ...place, held: false }, closed);
    onPoints(more.points);
    setMoved(more.at);
  };
  const move = (event: PointerEvent) => {
    if (moved === null || event.buttons === 0) return;
    const place = placeOf(event);
    onPoints(points.map((point, at) => (at === moved ? { ...point, ...place } : point)));
  };
  return (
    <div ref={board} className={styles.board} onPointerDown={press} onPointerMove={move} onPointerUp={() => setMoved(null)}>
      <PhotoWithLines photo={photo} window={window} drawn={[drawnOn(photo)]} broken>
        {line === null ? null : <path className={styles.line} d={`M${line.map((place) => place.join(' ')).join('L')}${closed ? 'Z' : ''}`} />}
        {points.map(({ acrossMm, downMm }, at) => (
          <g key={at} className={styles.point} transform={`translate(${acrossMm} ${downMm})`}>
            <circle r="0.45" />
            <text x="0.7" y="-0.4">
              {at + 1}
            </text>
          </g>
        ))}
      </PhotoWithLines>
    </div>
  );
}

interface PointsProps {
  readonly points: readonly SetPoint[];
  readonly closed: boolean;
  /** Where a point appears that is added without pressing on the photo. */
  readonly middle: SetPoint;
  readonly onPoints: (points: readonly SetPoint[]) => void;
}

/** The same points for keys: arrows move one, Delete takes it off. What was moved with care stays where it is put. */
function Points({ points, closed, middle, onPoints }: PointsProps) {
  const list = useRef<HTMLOListElement>(null);
  const focusOn = (at: number) => setTimeout(() => list.current?.querySelectorAll('button')[at]?.focus());
  const add = () => {
    const last = points.at(-1) ?? middle;
    const more = withPoint(points, { acrossMm: last.acrossMm + 1, downMm: last.downMm + 1, held: true }, closed);
    onPoints(more.points);
    focusOn(more.at);
  };
  const keys = (event: KeyboardEvent, at: number) => {
    const arrow = ARROWS[event.key];
    if (arrow === undefined && event.key !== 'Delete' && event.key !== 'Backspace') return;
    event.preventDefault();
    if (arrow === undefined) {
      onPoints(points.filter((_, place) => place !== at));
      return focusOn(Math.max(0, at - 1));
    }
    const [across, down] = arrow;
    onPoints(points.map((point, place) => (place === at ? { acrossMm: point.acrossMm + across * STEP_MM, downMm: point.downMm + down * STEP_MM, held: true } : point)));
  };
  return (
    <div>
      <p id="points-how" className={styles.small}>
        {points.length} {points.length === 1 ? 'point' : 'points'}. Arrow keys move a point by {STEP_MM} mm, Delete takes it off.
      </p>
      <ol ref={list} className={styles.points} aria-describedby="points-how">
        {points.map(({ acrossMm, downMm, held }, at) => (
          <li key={at}>
            <button type="button" className={styles.place} onKeyDown={(event) => keys(event, at)} aria-label={`Point ${at + 1}: ${acrossMm.toFixed(2)} mm across, ${downMm.toFixed(2)} mm down${held ? ', held' : ''}`}>
              {at + 1}
              {held ? '·' : ''}
            </button>
          </li>
        ))}
      </ol>
      <Button onClick={add}>Add a point</Button>
    </div>
  );
}
