'use client';

import { useState, type FormEvent } from 'react';
import type { ShownPerson } from '@/lib/server/load-people';
import { Button } from '../../../_components/button';
import { Choice } from '../../../_components/choice';
import { Field } from '../../../_components/field';
import { Notice } from '../../../_components/notice';
import styles from '../_clinic/clinic.module.css';

const ROLES = [
  { value: 'nurse', label: 'Nurse' },
  { value: 'clinician', label: 'Clinician' },
  { value: 'lead', label: 'Lead clinician' },
  { value: 'admin', label: 'Admin' },
] as const;

/** Who works here: roles, invitations, and the end of access. An admin sees no patient. */
export function PeopleScreen({ people }: { readonly people: readonly ShownPerson[] }) {
  const [problem, setProblem] = useState('');
  const [open, setOpen] = useState<string | null>(null);
  const [address, setAddress] = useState('');

  async function send(body: unknown): Promise<{ address?: string } | null> {
    const response = await fetch('/api/staff/people', { method: 'POST', body: JSON.stringify(body) }).catch(() => null);
    const said = (await response?.json().catch(() => null)) as { sentence?: string; address?: string } | null;
    setProblem(response?.ok ? '' : (said?.sentence ?? 'The server did not take this. Nothing was changed.'));
    return response?.ok ? said : null;
  }
  const change = async (body: unknown) => {
    if ((await send(body)) !== null) window.location.reload();
  };

  return (
    <main className={styles.page}>
      <header>
        <h1>People</h1>
        <p className={styles.soft}>A lead clinician changes plans and limits; an admin lets people in and out, and sees no patient. What somebody did stays under their name.</p>
      </header>
      <div role="status">
        {problem === '' ? null : <Notice title={problem} />}
        {address === '' ? null : (
          <Notice title="Hand this link to the person yourself. It is shown this once, counts once, and ends in a week.">
            <p className={styles.address}>{address}</p>
          </Notice>
        )}
      </div>
      <ul className={styles.list}>
        {people.map((person) => (
          <li key={person.id} className={styles.row}>
            <div>
              <p className={styles.name}>{person.name}</p>
              <p>
                {person.email}, {person.role}, since {person.since}
              </p>
              <p className={styles.soft}>{person.active ? (person.hasFactor ? 'Has a second factor.' : 'No second factor.') : 'Access has ended.'}</p>
            </div>
            {person.active ? (
              <Button aria-expanded={open === person.id} aria-label={`Change: ${person.name}`} onClick={() => setOpen(open === person.id ? null : person.id)}>
                Change
              </Button>
            ) : null}
            {open === person.id ? <PersonForm person={person} onChange={(body) => void change(body)} /> : null}
          </li>
        ))}
      </ul>
      <InviteForm onInvite={async (body) => setAddress((await send(body))?.address ?? '')} />
    </main>
  );
}

function PersonForm({ person: { id, name, role, hasFactor }, onChange }: { readonly person: ShownPerson; readonly onChange: (body: unknown) => void }) {
  const [as, setAs] = useState(role);
  return (
    <div className={styles.form} role="group" aria-label={`Change: ${name}`}>
      <div className={styles.wide}>
        <Choice legend="Role" wrap options={ROLES} chosen={[as as (typeof ROLES)[number]['value']]} onChoose={setAs} />
        <div className={styles.tools}>
          <Button onClick={() => onChange({ step: 'role', staffId: id, role: as })}>Keep the role</Button>
          <Button onClick={() => onChange({ step: 'end', staffId: id })}>End access now</Button>
          {hasFactor ? <Button onClick={() => onChange({ step: 'endFactor', staffId: id })}>End the second factor: the phone is lost</Button> : null}
        </div>
      </div>
    </div>
  );
}

function InviteForm({ onInvite }: { readonly onInvite: (body: unknown) => Promise<void> }) {
  const [name, setName] = useState('');
  const [email, setEmail] = useState('');
  const [role, setRole] = useState<(typeof ROLES)[number]['value']>('nurse');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void onInvite({ step: 'invite', name, email, role });
  };
  return (
    <form className={styles.form} onSubmit={submit} aria-labelledby="invite">
      <h2 id="invite" className={styles.wide}>
        Invite somebody
      </h2>
      <Field label="Name" maxLength={80} value={name} onChange={setName} />
      <Field label="Work e-mail" hint="For somebody who is here already this makes a new password." maxLength={200} value={email} onChange={setEmail} />
      <div className={styles.wide}>
        <Choice legend="Role" wrap options={ROLES} chosen={[role]} onChoose={setRole} />
        <div>
          <Button type="submit">Make an invitation</Button>
        </div>
      </div>
    </form>
  );
}
