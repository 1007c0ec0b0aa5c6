'use client';

import { useEffect, useRef, useState, type KeyboardEvent } from 'react';
import { Notice } from '../../_components/notice';
import { CasePanel } from './case-panel';
import { ReviewRows } from './review-list';
import styles from './review.module.css';
import { lettersAreOn, setLettersOn, useLetters } from './use-letters';
import { useReview } from './use-review';

/** The list, and beside it the case that is open. */
export function ReviewScreen() {
  const { list, offline, news, renew } = useReview();
  const [openId, setOpenId] = useState<string | null>(null);
  const [done, setDone] = useState('');
  const rows = useRef<HTMLDivElement>(null);

  const buttons = () => [...(rows.current?.querySelectorAll<HTMLButtonElement>('[data-row]') ?? [])];
  const move = (by: number) => {
    const all = buttons();
    const here = all.findIndex((one) => one === document.activeElement || one.dataset.row === openId);
    all[Math.min(all.length - 1, Math.max(0, here < 0 ? 0 : here + by))]?.focus();
  };
  const close = () => {
    const was = openId;
    setOpenId(null);
    requestAnimationFrame(() => buttons().find((one) => one.dataset.row === was)?.focus());
  };
  // From nowhere an arrow begins the list; beside an open case, or in it, arrows scroll.
  const begin = () => (document.activeElement === document.body && openId === null ? move(1) : false);
  useLetters({ j: () => move(1), k: () => move(-1), ArrowDown: begin, ArrowUp: begin, Escape: close });
  // While the focus is in the list, arrows belong to it.
  const arrows = (event: KeyboardEvent<HTMLElement>) => {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    move(by);
  };

  async function resolved(words: string): Promise<void> {
    const all = buttons();
    const next = all.at(all.findIndex((one) => one.dataset.row === openId) + 1)?.dataset.row;
    // First the list without it, then the words: what is said and what is seen agree.
    await renew();
    setDone(words);
    setOpenId(null);
    requestAnimationFrame(() => (buttons().find((one) => one.dataset.row === next) ?? buttons()[0])?.focus());
  }

  return (
    <main className={openId === null ? styles.page : `${styles.page} ${styles.twoSheets}`}>
      <div className={styles.listSide}>
        <div className={styles.listHead}>
          <h1>To be looked at</h1>
          <Hints />
        </div>
        <p className={styles.unseen} role="status">
          {news}
        </p>
        <p role="status" className={done === '' ? styles.unseen : styles.done}>
          {done}
        </p>
        {offline ? <Notice live title="The server does not answer. This list may be old." /> : null}
        {list === null ? <p>Opening the list …</p> : null}
        {list !== null && list.rows.length === 0 ? <p>Nothing waits on this list now. New cases come by themselves.</p> : null}
        <div ref={rows} onKeyDown={arrows}>{list === null ? null : <ReviewRows list={list} openId={openId} onOpen={setOpenId} />}</div>
      </div>
      {openId === null ? null : (
        <div className={styles.panelSide}>
          <CasePanel key={openId} episodeId={openId} onClose={close} onResolved={(words) => void resolved(words)} />
        </div>
      )}
    </main>
  );
}

/** Which keys do what; and letters can be switched off. */
function Hints() {
  const [on, setOn] = useState(true);
  useEffect(() => setOn(lettersAreOn()), []);
  return (
    <p className={styles.hints}>
      <kbd>J</kbd> <kbd>K</kbd> or arrows move, <kbd>Enter</kbd> opens, <kbd>Esc</kbd> closes{' '}
      <label className={styles.toggle}>
        <input
          type="checkbox"
          checked={on}
          onChange={(event) => {
            setLettersOn(event.target.checked);
            setOn(event.target.checked);
          }}
        />{' '}
        letter keys
      </label>
    </p>
  );
}
