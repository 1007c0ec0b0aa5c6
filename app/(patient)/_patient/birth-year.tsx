'use client';

import { useState, type FormEvent } from 'react';
import { Button } from '../../_components/button';
import { Field } from '../../_components/field';
import { usePatient } from './patient-context';
import styles from './patient.module.css';

type Trouble = 'wrong' | 'tooOften' | 'noNetwork' | null;

async function answerYear(birthYear: number): Promise<Trouble> {
  try {
    const response = await fetch('/api/patient/birth-year', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ birthYear }),
    });
    if (response.ok) return null;
    return response.status === 429 ? 'tooOften' : response.status < 500 ? 'wrong' : 'noNetwork';
  } catch {
    return 'noNetwork';
  }
}

/** The second question some clinics ask before anything is shown: the link may have been seen by somebody else. */
export function BirthYear() {
  const { messages, reload } = usePatient();
  const [typed, setTyped] = useState('');
  const [trouble, setTrouble] = useState<Trouble>(null);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const found = /^\d{4}$/.test(typed.trim()) ? await answerYear(Number(typed)) : 'wrong';
    setTrouble(found);
    if (found === null) reload();
  };
  const text = messages.birthYear;
  return (
    <form className={styles.section} onSubmit={(event) => void submit(event)}>
      <h1>{text.title}</h1>
      <p>{text.text}</p>
      <Field numeric label={text.label} value={typed} onChange={setTyped} maxLength={4} wrong={trouble ? text[trouble] : undefined} />
      <Button look="main" type="submit">
        {messages.steps.next}
      </Button>
    </form>
  );
}
