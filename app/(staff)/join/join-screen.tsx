'use client';

import { useState, type FormEvent } from 'react';
import { Button, ButtonLink } from '../../_components/button';
import { Notice } from '../../_components/notice';
import styles from '../sign-in/sign-in.module.css';

/** A password of one's own, from an invitation. Looking at the page uses nothing up; pressing the button does. */
export function JoinScreen() {
  const [problem, setProblem] = useState('');
  const [email, setEmail] = useState('');

  async function join(password: string): Promise<void> {
    const body = JSON.stringify({ secret: window.location.hash.slice(1), password });
    const response = await fetch('/api/staff/join', { method: 'POST', body }).catch(() => null);
    const said = (await response?.json().catch(() => null)) as { email?: string; sentence?: string } | null;
    if (!response?.ok) return setProblem(said?.sentence ?? 'The server could not take this. Try again.');
    window.history.replaceState(null, '', '/join');
    setProblem('');
    setEmail(said?.email ?? '');
  }
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    void join(String(new FormData(event.currentTarget).get('password')));
  };

  if (email !== '') {
    return (
      <main className={styles.page}>
        <h1>Your password is kept</h1>
        <p>Sign in with {email}.</p>
        <ButtonLink look="main" href="/sign-in">
          Sign in
        </ButtonLink>
      </main>
    );
  }
  return (
    <main className={styles.page}>
      <h1>Make a password</h1>
      <form className={styles.form} onSubmit={submit}>
        <label className={styles.label}>
          New password
          <input className={styles.input} name="password" type="password" autoComplete="new-password" required minLength={12} maxLength={200} aria-describedby="how" autoFocus />
        </label>
        <p id="how" className={styles.soft}>
          At least 12 letters. Several words in a row do well.
        </p>
        <div role="status">{problem === '' ? null : <Notice title={problem} />}</div>
        <Button look="main" type="submit">
          Keep my password
        </Button>
      </form>
    </main>
  );
}
