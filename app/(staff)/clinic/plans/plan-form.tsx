'use client';

import { useState, type FormEvent } from 'react';
import type { PlanTemplate } from '@/lib/care/plan-templates';
import { Button } from '../../../_components/button';
import { Choice } from '../../../_components/choice';
import { Field } from '../../../_components/field';
import styles from '../_clinic/clinic.module.css';

interface PlanFormProps {
  readonly first: { readonly name: string; readonly plan: PlanTemplate['plan'] | undefined };
  readonly onKeep: (template: unknown) => void;
  readonly onCancel: () => void;
}

const NUMBERS = [
  { key: 'dressingStaysHours', label: 'First dressing stays on, hours' },
  { key: 'soaksPerDay', label: 'Soaks a day', hint: '0 for none.' },
  { key: 'soakMinutes', label: 'Minutes of each soak' },
  { key: 'soakDays', label: 'Soaks until day' },
  { key: 'checkInEveryHours', label: 'A check-in every so many hours' },
  { key: 'graceHours', label: 'Asked about after so many hours more' },
] as const;
type NumberKey = (typeof NUMBERS)[number]['key'];

/** One regimen. The server looks at every number. */
export function PlanForm({ first, onKeep, onCancel }: PlanFormProps) {
  const [name, setName] = useState(first.name);
  const [numbers, setNumbers] = useState(() => Object.fromEntries(NUMBERS.map(({ key }) => [key, String(first.plan?.[key] ?? '')])) as Record<NumberKey, string>);
  const [covered, setCovered] = useState(first.plan?.coverBetweenSoaks ?? true);
  const [notes, setNotes] = useState(first.plan?.notes ?? '');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const entered = Object.entries(numbers).map(([key, text]) => [key, text.trim() === '' ? null : Number(text.replace(',', '.'))]);
    onKeep({ name, plan: { ...Object.fromEntries(entered), coverBetweenSoaks: covered, ...(notes.trim() === '' ? {} : { notes }) } });
  };
  return (
    <form className={styles.form} onSubmit={submit} aria-label={first.name === '' ? 'Add a plan' : `Change: ${first.name}`}>
      <div className={styles.wide}>
        <Field label="Name" hint="As staff choose it." maxLength={80} value={name} onChange={setName} />
      </div>
      {NUMBERS.map(({ key, label, ...more }) => (
        <Field key={key} label={label} {...more} numeric maxLength={6} value={numbers[key]} onChange={(text) => setNumbers({ ...numbers, [key]: text })} />
      ))}
      <div className={styles.wide}>
        <Choice
          legend="Between soaks"
          wrap
          options={[
            { value: 'covered', label: 'Covered' },
            { value: 'open', label: 'Open to the air' },
          ]}
          chosen={[covered ? 'covered' : 'open']}
          onChoose={(value) => setCovered(value === 'covered')}
        />
        <Field long label="Notes for the patient" hint="In the patient’s words, at most 400 letters. They stand on the sheet as they are." maxLength={400} value={notes} onChange={setNotes} />
        <div className={styles.tools}>
          <Button type="submit">Keep the plan</Button>
          <Button look="plain" onClick={onCancel}>
            Not yet
          </Button>
        </div>
      </div>
    </form>
  );
}
