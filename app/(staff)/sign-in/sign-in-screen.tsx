'use client';

import { useRef, useState, type FormEvent } from 'react';
import { Button } from '../../_components/button';
import { Notice } from '../../_components/notice';
import styles from './sign-in.module.css';

/** What went wrong, in one sentence. */
function problemOf(said: { readonly problem?: string; readonly waitSeconds?: number }): string {
  if (said.problem === 'codeNeeded') return 'Enter the code that your authenticator app shows, or a recovery code.';
  if (said.problem === 'wrongCode') return 'That code does not fit, or it was used already. Wait for the next one.';
  if (said.problem === 'wrongPassword') return 'That address and password do not belong together.';
  if (said.problem === 'tooManyTries') return `That was tried too often. Wait ${said.waitSeconds} seconds and try again.`;
  return 'The server could not take this. Try again.';
}

/** Address and password. There is no way to make an account here: the clinic does that. */
export function SignInScreen() {
  const form = useRef<HTMLFormElement>(null);
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);
  const [asksCode, setAsksCode] = useState(false);

  async function send(): Promise<void> {
    const entered = new FormData(form.current ?? undefined);
    setBusy(true);
    setProblem('');
    try {
      const code = entered.get('code');
      const body = JSON.stringify({ email: entered.get('email'), password: entered.get('password'), ...(code === null ? {} : { code }) });
      const response = await fetch('/api/staff/sign-in', { method: 'POST', headers: { 'content-type': 'application/json' }, body });
      const said = (await response.json().catch(() => ({}))) as { problem?: string; waitSeconds?: number; role?: string };
      if (response.ok) window.location.assign(said.role === 'admin' ? '/clinic' : '/review');
      else setProblem(problemOf(said));
      if (said.problem === 'codeNeeded') setAsksCode(true);
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
        {asksCode ? (
          <label className={styles.label}>
            Code
            <input className={styles.input} name="code" type="text" inputMode="numeric" autoComplete="one-time-code" required maxLength={40} autoFocus />
          </label>
        ) : null}
        <div role="status">{problem === '' ? null : <Notice title={problem} />}</div>
        <Button look="main" type="submit" aria-disabled={busy}>
          {busy ? 'Signing in …' : 'Sign in'}
        </Button>
      </form>
      <p className={styles.soft}>For the clinic’s staff. Patients open the personal link on their aftercare sheet.</p>
    </main>
  );
}
