'use client';

import { useId } from 'react';
import { localInstant } from '../../../(patient)/_queue/local-instant';
import fieldStyles from '../../../_components/field.module.css';

interface TimeFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** A time by this machine's clock; its offset from UTC is said and kept with it. */
export function TimeField({ label, value, onChange }: TimeFieldProps) {
  const id = useId();
  const ms = Date.parse(value);
  return (
    <div className={fieldStyles.field}>
      <label className={fieldStyles.label} htmlFor={id}>
        {label}
      </label>
      <span id={`${id}-hint`} className={fieldStyles.hint}>
        {Number.isNaN(ms) ? 'By this machine’s clock.' : `By this machine’s clock, UTC${localInstant(ms).slice(19)}.`}
      </span>
      <input id={id} className={fieldStyles.input} type="datetime-local" value={value} aria-describedby={`${id}-hint`} onChange={(event) => onChange(event.target.value)} />
    </div>
  );
}
