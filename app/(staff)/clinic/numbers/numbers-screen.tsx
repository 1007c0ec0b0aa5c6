'use client';

import { useState, type FormEvent } from 'react';
import { Button } from '../../../_components/button';
import { Choice } from '../../../_components/choice';
import { Field } from '../../../_components/field';
import { Notice } from '../../../_components/notice';
import styles from '../_clinic/clinic.module.css';

interface Numbers {
  readonly name: string;
  readonly phone: string;
  readonly emergencyPhone: string;
  readonly openingHours: string;
  readonly paper: string;
}

const PAPERS = [
  { value: 'a4', label: 'A4' },
  { value: 'letter', label: 'US Letter' },
];

/** Whom patients call, and when; and the paper in the printer. */
export function NumbersScreen({ clinic: { name, ...first } }: { readonly clinic: Numbers }) {
  const [{ phone, emergencyPhone, openingHours, paper }, setNumbers] = useState(first);
  const [said, setSaid] = useState('');
  const set = (change: Partial<Numbers>) => setNumbers((before) => ({ ...before, ...change }));
  async function keep(): Promise<void> {
    const response = await fetch('/api/staff/clinic', { method: 'POST', body: JSON.stringify({ phone, emergencyPhone, openingHours, paper }) }).catch(() => null);
    const problem = ((await response?.json().catch(() => null)) as { sentence?: string } | null)?.sentence;
    setSaid(response?.ok ? 'It is kept, and stands on every patient’s page from now on. Sheets that were printed before still show the old numbers.' : (problem ?? 'The server did not take this. Nothing was changed.'));
  }
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void keep();
  };
  return (
    <main className={styles.page}>
      <header>
        <h1>Numbers and paper</h1>
        <p className={styles.soft}>{name}. This is what patients read when they need somebody: dial each number once before you keep it.</p>
      </header>
      <div role="status">{said === '' ? null : <Notice title={said} />}</div>
      <form className={styles.form} onSubmit={submit}>
        <Field label="The clinic’s telephone" maxLength={31} value={phone} onChange={(value) => set({ phone: value })} />
        <Field label="In an emergency" hint="The local emergency number." maxLength={31} value={emergencyPhone} onChange={(value) => set({ emergencyPhone: value })} />
        <Field label="Opening hours" maxLength={120} value={openingHours} onChange={(value) => set({ openingHours: value })} />
        <Choice legend="Paper in the printer" wrap options={PAPERS} chosen={[paper]} onChoose={(value) => set({ paper: value })} />
        <div className={styles.wide}>
          <div>
            <Button type="submit">Keep</Button>
          </div>
        </div>
      </form>
    </main>
  );
}
