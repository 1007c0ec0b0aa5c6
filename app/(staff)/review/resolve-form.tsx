'use client';

import { useEffect, useRef, useState, type KeyboardEvent } from 'react';
import type { ReviewCase } from '@/lib/server/review-case';
import { Button } from '../../_components/button';
import { Choice } from '../../_components/choice';
import { Field } from '../../_components/field';
import { Notice } from '../../_components/notice';
import styles from './review.module.css';
import { useLetters } from './use-letters';

const LETTERS: Readonly<Record<string, string>> = { called: 'c', messaged: 'm', bringInToday: 'b', askClinician: 'a', nothingNeeded: 'n' };

type Dryness = 'confirmed' | 'dismissed';

interface FormProps {
  readonly shown: ReviewCase;
  readonly held: boolean;
  readonly reload: () => Promise<void>;
  readonly onResolved: (words: string) => void;
}

/** What is done about the case: one action, its note, and the word that is kept. */
export function ResolveForm({ shown, held, reload, onResolved }: FormProps) {
  const [action, setAction] = useState<string | null>(null);
  const [note, setNote] = useState('');
  const [message, setMessage] = useState('');
  const [dryness, setDryness] = useState<Dryness | null>(null);
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);
  const fields = useRef<HTMLDivElement>(null);
  const chosen = shown.actions.find((one) => one.action === action);
  const usable = !held && shown.seen.length > 0;

  const choose = (one: string) => {
    if (!usable) return;
    setAction(one);
    setProblem('');
  };
  useLetters(Object.fromEntries(shown.actions.map((one) => [LETTERS[one.action], () => choose(one.action)])));
  useEffect(() => fields.current?.querySelector('textarea')?.focus(), [action]);

  async function save(): Promise<void> {
    if (busy || chosen === undefined) return;
    setBusy(true);
    const body = JSON.stringify({ action, note, message: action === 'messaged' ? message : null, dryness, seen: shown.seen });
    const response = await fetch(`/api/staff/review/${shown.episodeId}/resolve`, { method: 'POST', body }).catch(() => null);
    setBusy(false);
    if (response?.ok) return onResolved(`${shown.caseCode}: ${chosen.words}. It is kept.`);
    const said = (await response?.json().catch(() => null)) as { problem?: string; sentence?: string; by?: string } | null;
    if (said?.problem === 'changed') await reload();
    setProblem(problemWords(said));
  }
  const keys = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) void save();
  };

  return (
    <section className={styles.part} aria-label="What is done">
      <h3>What is done</h3>
      <div className={styles.tools}>
        {shown.actions.map((one) => (
          <Button key={one.action} aria-pressed={one.action === action} disabled={!usable} onClick={() => choose(one.action)}>
            {one.words} <kbd>{LETTERS[one.action].toUpperCase()}</kbd>
          </Button>
        ))}
      </div>
      {chosen === undefined || !usable ? null : (
        <div ref={fields} className={styles.form} onKeyDown={keys}>
          {action === 'messaged' ? <Field long label="Message" hint="The patient reads this on their page." value={message} onChange={setMessage} maxLength={2000} /> : null}
          {shown.asksDryness && action !== 'askClinician' ? <DryQuestion dryness={dryness} onChoose={setDryness} /> : null}
          <Field long label="Note" hint={chosen.noteAsks ?? 'May be left empty. The patient does not read it.'} value={note} onChange={setNote} maxLength={2000} />
          <div role="status">{problem === '' ? null : (
              <Notice>
                <p>{problem}</p>
              </Notice>
            )}</div>
          <div className={styles.tools}>
            <Button aria-disabled={busy} onClick={() => void save()}>
              Keep: {chosen.words} <kbd>Ctrl Enter</kbd>
            </Button>
            <Button look="plain" onClick={() => setAction(null)}>
              Not yet
            </Button>
          </div>
        </div>
      )}
    </section>
  );
}

function problemWords(said: { problem?: string; sentence?: string; by?: string } | null): string {
  if (said?.sentence) return said.sentence;
  if (said?.problem === 'claimed') return `${said.by} has taken the case over. Nothing was kept.`;
  if (said?.problem === 'changed') return 'Something new has come on this case. Look at it, then keep your word again.';
  return 'The server did not take this. Nothing was kept; try again.';
}

function DryQuestion({ dryness, onChoose }: { readonly dryness: Dryness | null; readonly onChoose: (value: Dryness) => void }) {
  const options = [
    { value: 'confirmed', label: 'Yes, it is dry' },
    { value: 'dismissed', label: 'No, not yet' },
  ] as const;
  return <Choice<Dryness> legend="It looks dry: do you agree?" options={options} chosen={dryness === null ? [] : [dryness]} onChoose={onChoose} />;
}
