'use client';

import { useState, type FormEvent } from 'react';
import { Button } from '../../_components/button';
import { Field } from '../../_components/field';
import { Notice } from '../../_components/notice';
import { PasswordForm } from './password-form';
import styles from '../clinic/_clinic/clinic.module.css';

interface Begun {
  readonly secret: string;
  readonly address: string;
  readonly code: readonly (readonly boolean[])[];
}

/** One's own password, and one's own second factor: set up with an authenticator app, or ended with a code. */
export function AccountScreen({ hasFactor, codesLeft }: { readonly hasFactor: boolean; readonly codesLeft: number }) {
  const [begun, setBegun] = useState<Begun | null>(null);
  const [recovery, setRecovery] = useState<readonly string[]>([]);
  const [code, setCode] = useState('');
  const [problem, setProblem] = useState('');

  async function send<Said>(body: unknown): Promise<Said | null> {
    const response = await fetch('/api/staff/second-factor', { method: 'POST', body: JSON.stringify(body) }).catch(() => null);
    const said = (await response?.json().catch(() => null)) as (Said & { sentence?: string }) | null;
    setProblem(response?.ok ? '' : (said?.sentence ?? 'The server did not take this. Try again.'));
    return response?.ok ? said : null;
  }
  const confirm = async () => setRecovery((await send<{ recoveryCodes: string[] }>({ step: 'confirm', code }))?.recoveryCodes ?? []);
  const end = async () => {
    if ((await send({ step: 'end', code })) !== null) window.location.reload();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void (hasFactor ? end() : confirm());
  };

  return (
    <main className={styles.page}>
      <h1>Your account</h1>
      <PasswordForm />
      <h2>Second factor</h2>
      <div role="status">{problem === '' ? null : <Notice title={problem} />}</div>
      {recovery.length > 0 ? (
        <section>
          <h3>It counts from now on</h3>
          <p>Write these down: each opens once, if the phone is lost. They are shown this once.</p>
          <ul className={styles.address}>
            {recovery.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </section>
      ) : (
        <>
          <p>{hasFactor ? `You are asked for a code after your password. ${codesLeft} recovery codes are left.` : 'With an authenticator app on your phone nobody signs in with your password alone.'}</p>
          {!hasFactor && begun === null ? (
            <div>
              <Button onClick={() => void send<Begun>({ step: 'begin' }).then(setBegun)}>Set up</Button>
            </div>
          ) : null}
          {begun === null ? null : <Square begun={begun} />}
          {hasFactor || begun !== null ? (
            <form className={styles.form} onSubmit={submit}>
              <Field label={hasFactor ? 'A code, to end the second factor' : 'The code that the app shows'} numeric maxLength={20} value={code} onChange={setCode} />
              <div className={styles.wide}>
                <div>
                  <Button type="submit">{hasFactor ? 'End the second factor' : 'Confirm'}</Button>
                </div>
              </div>
            </form>
          ) : null}
        </>
      )}
    </main>
  );
}

/** The square code, drawn with its quiet zone on white whatever the page looks like. */
function Square({ begun: { secret, code } }: { readonly begun: Begun }) {
  const size = code.length + 8;
  const path = code.flatMap((row, down) => row.map((dark, across) => (dark ? `M${across + 4} ${down + 4}h1v1h-1z` : ''))).join('');
  return (
    <section>
      <p>Scan this with the app, or type the secret into it.</p>
      <svg className={styles.code} viewBox={`0 0 ${size} ${size}`} role="img" aria-label="Square code for the authenticator app" shapeRendering="crispEdges">
        <rect width={size} height={size} fill="white" />
        <path d={path} fill="black" />
      </svg>
      <p className={styles.address}>{secret.replace(/(.{4})/g, '$1 ').trim()}</p>
    </section>
  );
}
