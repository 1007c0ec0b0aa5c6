'use client';

import { useState, type FormEvent } from 'react';
import type { ShownLimit } from '@/lib/server/load-rule-book';
import { Button } from '../../../_components/button';
import { Field } from '../../../_components/field';
import { Notice } from '../../../_components/notice';
import styles from '../_clinic/clinic.module.css';

interface LimitFormProps {
  readonly limit: ShownLimit;
  /** The version on the screen. */
  readonly from: number;
  readonly onCancel: () => void;
}

/** Another number for one limit, with where it comes from and why. A change by which a rule hears less is asked about once more. */
export function LimitForm({ limit: { id, name, unit, least, most }, from, onCancel }: LimitFormProps) {
  const [value, setValue] = useState('');
  const [source, setSource] = useState('');
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState('');
  const [less, setLess] = useState<readonly string[]>([]);

  async function keep(confirmed: boolean): Promise<void> {
    const number = Number(value.replace(',', '.'));
    if (value.trim() === '' || !Number.isFinite(number)) return setProblem('Enter the new number.');
    const body = JSON.stringify({ from, changes: [{ id, value: number, source }], reason, confirmed });
    const response = await fetch('/api/staff/rule-books', { method: 'POST', body }).catch(() => null);
    if (response?.ok) return window.location.reload();
    const said = (await response?.json().catch(() => null)) as { problem?: string; sentence?: string; sentences?: string[] } | null;
    setLess(said?.problem === 'lessSensitive' ? (said.sentences ?? []) : []);
    setProblem(said?.problem === 'lessSensitive' ? '' : (said?.sentence ?? 'The server did not take this. Nothing was changed.'));
  }
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void keep(false);
  };
  const enter = (set: (text: string) => void) => (text: string) => {
    set(text);
    setLess([]);
  };

  return (
    <form className={styles.form} onSubmit={submit} aria-label={`Change: ${name}`}>
      <Field label={`New number${unit === '' ? '' : `, ${unit}`}`} hint={`From ${least} to ${most}.`} numeric maxLength={8} value={value} onChange={enter(setValue)} />
      <Field label="Source" hint="Where the number comes from." maxLength={500} value={source} onChange={enter(setSource)} />
      <Field label="Reason" hint="Why it is changed here." maxLength={500} value={reason} onChange={enter(setReason)} />
      <div className={styles.wide}>
        <div role="status">{problem === '' ? null : <Notice title={problem} />}</div>
        <div role="alert">
          {less.length === 0 ? null : (
            <Notice title="With this change a rule hears less than now.">
              {less.map((one) => (
                <p key={one}>{one}</p>
              ))}
              <Button onClick={() => void keep(true)}>Change it all the same</Button>
            </Notice>
          )}
        </div>
        <div className={styles.tools}>
          <Button type="submit">Keep as a new version</Button>
          <Button look="plain" onClick={onCancel}>
            Not yet
          </Button>
        </div>
      </div>
    </form>
  );
}
