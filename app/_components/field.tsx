import { useId, type ReactNode } from 'react';
import styles from './field.module.css';

interface FieldProps {
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  /** What is wrong with the value, in words; nothing while it can stand. */
  readonly wrong?: ReactNode;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** Several lines of free text. */
  readonly long?: boolean;
  readonly numeric?: boolean;
  readonly maxLength?: number;
}

/** A line or a box to write in. */
export function Field({ label, hint, wrong, value, onChange, long = false, numeric = false, maxLength }: FieldProps) {
  const id = useId();
  const described = [hint === undefined ? '' : `${id}-hint`, wrong ? `${id}-wrong` : ''].filter(Boolean).join(' ');
  const attributes = {
    id,
    className: styles.input,
    value,
    maxLength,
    'aria-describedby': described || undefined,
    'aria-invalid': Boolean(wrong),
    onChange: (event: { target: { value: string } }) => onChange(event.target.value),
  };
  return (
    <div className={styles.field}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      {hint === undefined ? null : (
        <span id={`${id}-hint`} className={styles.hint}>
          {hint}
        </span>
      )}
      {long ? (
        <textarea rows={4} {...attributes} />
      ) : (
        <input type="text" autoComplete="off" inputMode={numeric ? 'decimal' : 'text'} {...attributes} />
      )}
      <div id={`${id}-wrong`} role="status" className={wrong ? styles.wrong : undefined}>
        {wrong}
      </div>
    </div>
  );
}
