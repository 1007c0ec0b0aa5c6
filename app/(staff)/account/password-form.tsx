'use client';

import { useState, type FormEvent } from 'react';
import { Button } from '../../_components/button';
import { Notice } from '../../_components/notice';
import styles from '../sign-in/sign-in.module.css';

/** Another password for oneself. */
export function PasswordForm() {
  const [said, setSaid] = useState('');
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const entered = new FormData(form);
    void change(String(entered.get('old')), String(entered.get('password'))).then(({ words, changed }) => {
      setSaid(words);
      if (changed) form.reset();
    });
  };
  return (
    <form className={styles.form} onSubmit={submit} aria-labelledby="password">
      <h2 id="password">Password</h2>
      <label className={styles.label}>
        Old password
        <input className={styles.input} name="old" type="password" autoComplete="current-password" required maxLength={200} />
      </label>
      <label className={styles.label}>
        New password
        <input className={styles.input} name="password" type="password" autoComplete="new-password" required minLength={12} maxLength={200} aria-describedby="how" />
      </label>
      <p id="how" className={styles.soft}>
        At least 12 letters. Several words in a row do well.
      </p>
      <div role="status">{said === '' ? null : <Notice title={said} />}</div>
      <div>
        <Button type="submit">Change the password</Button>
      </div>
    </form>
  );
}

async function change(old: string, password: string): Promise<{ readonly words: string; readonly changed: boolean }> {
  const response = await fetch('/api/staff/password', { method: 'POST', body: JSON.stringify({ old, password }) }).catch(() => null);
  if (response?.ok) return { words: 'It is changed. Wherever else you were signed in, you no longer are.', changed: true };
  const refused = (await response?.json().catch(() => null)) as { sentence?: string } | null;
  return { words: refused?.sentence ?? 'The server did not take this. Your old password stands.', changed: false };
}
