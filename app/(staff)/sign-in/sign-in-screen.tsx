'use client';

import { useRef, useState, type FormEvent } from 'react';
import { Button } from '../../_components/button';
import { Notice } from '../../_components/notice';
import styles from './sign-in.module.css';

/** What went wrong, in one sentence. */
async function problemOf(response: Response): Promise<string> {
  const said = (await response.json().catch(() => ({}))) as { problem?: string; waitSeconds?: number };
  if (said.problem === 'wrongPassword') return 'That address and password do not belong together.';
  if (said.problem === 'tooManyTries') return `That was tried too often. Wait ${said.waitSeconds} seconds and try again.`;
  return 'The server could not take this. Try again.';
}

/** Address and password. There is no way to make an account here: the clinic does that. */
export function SignInScreen() {
  const form = useRef<HTMLFormElement>(null);
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);

  async function send(): Promise<void> {
    const entered = new FormData(form.current ?? undefined);
    setBusy(true);
    setProblem('');
    try {
      const body = JSON.stringify({ email: entered.get('email'), password: entered.get('password') });
      const response = await fetch('/api/staff/sign-in', { method: 'POST', headers: { 'content-type': 'application/json' }, body });
      if (response.ok) window.location.assign('/review');
      else setProblem(await problemOf(response));
    } catch {
      setProblem('There is no connection to the server. Try again.');
    }
    setBusy(false);
  }
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!busy) void send();
  };

  return (
    <main className={styles.page}>
      <h1>Sign in</h1>
      <form ref={form} className={styles.form} onSubmit={submit}>
        <label className={styles.label}>
          Work e-mail
          <input className={styles.input} name="email" type="email" autoComplete="username" required maxLength={200} autoFocus />
        </label>
        <label className={styles.label}>
          Password
          <input className={styles.input} name="password" type="password" autoComplete="current-password" required maxLength={200} />
        </label>
        <div role="status">{problem === '' ? null : <Notice title={problem} />}</div>
        <Button look="main" type="submit" aria-disabled={busy}>
          {busy ? 'Signing in …' : 'Sign in'}
        </Button>
      </form>
      <p className={styles.soft}>For the clinic’s staff. Patients open the personal link on their aftercare sheet.</p>
    </main>
  );
}
