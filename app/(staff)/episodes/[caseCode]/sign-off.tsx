'use client';

import { useState, type FormEvent } from 'react';
import type { ShownClosing } from '../../../../lib/server/shown-episode';
import { Button } from '../../../_components/button';
import { Choice } from '../../../_components/choice';
import { Field } from '../../../_components/field';
import { Notice } from '../../../_components/notice';
import styles from './sign-off.module.css';

type Step = 'settled' | 'leftOpen';

const STEPS = [
  { value: 'settled', label: 'Settled' },
  { value: 'leftOpen', label: 'Left open' },
] as const;
/** Whether a toe is dry is a question that a person answers. */
const DRY_STEPS = [
  { value: 'settled', label: 'Yes, it is dry' },
  { value: 'leftOpen', label: 'No, not dry yet' },
] as const;

interface SignOffProps {
  readonly closing: ShownClosing;
  readonly isClosed: boolean;
}

/** How the follow-up ended; and, for whoever may, ending it or opening it again. */
export function SignOff({ closing, isClosed }: SignOffProps) {
  const { record, mayClose } = closing;
  return (
    // On paper only what was decided: one page is one page.
    <section aria-labelledby="sign-off" className={record.length === 0 ? `${styles.signOff} ${styles.onScreen}` : styles.signOff}>
      <h2 id="sign-off">Sign-off</h2>
      {record.length === 0 ? <p>This follow-up has not been closed.</p> : null}
      <ol className={styles.record}>
        {record.map(({ key, closed, at, by, words, leftOpen }) => (
          <li key={key}>
            <p>
              <strong>{closed ? 'Closed' : 'Opened again'}</strong> on {at} by {by}.
            </p>
            <p>
              {closed ? 'Found at the follow-up: ' : 'Why: '}
              {words}
            </p>
            {closed ? <p>{leftOpen.length === 0 ? 'Nothing was left open.' : `Left open: ${leftOpen.join('; ')}`}</p> : null}
          </li>
        ))}
      </ol>
      {mayClose ? isClosed ? <Reopen closing={closing} /> : <Close closing={closing} /> : null}
    </section>
  );
}

/** Sends it, and shows the case as it stands then. @returns why it was not taken */
async function send(episodeId: string, body: unknown): Promise<string> {
  const response = await fetch(`/api/staff/episodes/${episodeId}/closing`, { method: 'POST', body: JSON.stringify(body) }).catch(() => null);
  if (response?.ok) {
    window.location.reload();
    return '';
  }
  const said = (await response?.json().catch(() => null)) as { sentence?: string } | null;
  return said?.sentence ?? 'The server did not take this. Nothing was changed.';
}

function Close({ closing: { episodeId, open, seen } }: { readonly closing: ShownClosing }) {
  const [begun, setBegun] = useState(false);
  const [found, setFound] = useState('');
  const [steps, setSteps] = useState<Readonly<Record<string, Step>>>({});
  const [notes, setNotes] = useState<Readonly<Record<string, string>>>({});
  const [problem, setProblem] = useState('');

  const submit = (event: FormEvent) => {
    event.preventDefault();
    const answers = open.flatMap(({ rule }) => (steps[rule] ? [{ rule, step: steps[rule], note: notes[rule] ?? '' }] : []));
    void send(episodeId, { step: 'close', found, answers, seen }).then(setProblem);
  };
  if (!begun) {
    return (
      <div className={styles.onScreen}>
        <Button onClick={() => setBegun(true)}>Close the follow-up</Button>
      </div>
    );
  }
  return (
    <form className={styles.form} onSubmit={submit}>
      <Field long label="What was found at the follow-up" hint="In your words. The program has none of its own for how a toe does." maxLength={2000} value={found} onChange={setFound} />
      {open.map(({ rule, name, level, sentences }) => (
        <div key={rule} className={styles.finding}>
          <p>
            <strong>{name}</strong>, {level}. {sentences.join(' ')}
          </p>
          <Choice<Step>
            legend={rule === 'dry' ? 'It looks dry: do you agree?' : `What becomes of “${name}”?`}
            wrap
            options={rule === 'dry' ? DRY_STEPS : STEPS}
            chosen={steps[rule] ? [steps[rule]] : []}
            onChoose={(step) => setSteps((before) => ({ ...before, [rule]: step }))}
          />
          {steps[rule] === undefined ? null : (
            <Field
              label={steps[rule] === 'settled' ? 'What settled it' : 'What is left open, and who looks after it'}
              maxLength={2000}
              value={notes[rule] ?? ''}
              onChange={(note) => setNotes((before) => ({ ...before, [rule]: note }))}
            />
          )}
        </div>
      ))}
      <p className={styles.small}>
        The patient’s page will say that the follow-up has ended and whom to call if something changes. A warning sign that they send later still comes onto the review list.
      </p>
      <div role="status">{problem === '' ? null : <Notice title={problem} />}</div>
      <div className={styles.buttons}>
        <Button type="submit">Close the follow-up</Button>
        <Button look="plain" onClick={() => setBegun(false)}>
          Not yet
        </Button>
      </div>
    </form>
  );
}

function Reopen({ closing: { episodeId } }: { readonly closing: ShownClosing }) {
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState('');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (reason.trim().length < 3) return setProblem('Why does the case go on? The reason is kept with it.');
    void send(episodeId, { step: 'reopen', reason }).then(setProblem);
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <Field label="Why the case goes on" hint="Opening it again is kept beside the closing." maxLength={2000} value={reason} onChange={setReason} />
      <div role="status">{problem === '' ? null : <Notice title={problem} />}</div>
      <div className={styles.buttons}>
        <Button type="submit">Open the case again</Button>
      </div>
    </form>
  );
}
