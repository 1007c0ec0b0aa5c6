import { useId, type ReactNode } from 'react';
import styles from './choice.module.css';

interface ChoiceProps<Value extends string> {
  readonly legend: ReactNode;
  /** The title of the page says the same: the legend is for screen readers only. */
  readonly titled?: boolean;
  readonly hint?: ReactNode;
  readonly options: readonly { readonly value: Value; readonly label: ReactNode }[];
  /** Those chosen now; with `many` unset there is at most one. */
  readonly chosen: readonly Value[];
  readonly onChoose: (value: Value, on: boolean) => void;
  /** Boxes to tick instead of one answer to pick. */
  readonly many?: boolean;
  /** Side by side, for short labels such as numbers. */
  readonly row?: boolean;
  /** Side by side, each as wide as its words: for a desk, where many short questions stand on one screen. */
  readonly wrap?: boolean;
}

/** One question with large answers to press. */
export function Choice<Value extends string>({ legend, titled = false, hint, options, chosen, onChoose, many = false, row = false, wrap = false }: ChoiceProps<Value>) {
  const id = useId();
  return (
    <fieldset className={styles.group} aria-describedby={hint === undefined ? undefined : `${id}-hint`}>
      <legend className={titled ? styles.unseen : styles.legend}>{legend}</legend>
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      <div className={[styles.options, row ? styles.row : '', wrap ? styles.wrap : ''].filter(Boolean).join(' ')}>
        {options.map(({ value, label }) => (
          <label key={value} className={styles.option}>
            <input
              className={styles.input}
              type={many ? 'checkbox' : 'radio'}
              name={id}
              value={value}
              checked={chosen.includes(value)}
              onChange={(event) => onChoose(value, event.target.checked)}
            />
            {row ? null : <Mark round={!many} />}
            <span>{label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

function Mark({ round }: { readonly round: boolean }) {
  return (
    <span className={round ? `${styles.mark} ${styles.round}` : styles.mark} aria-hidden="true">
      <svg className={styles.tick} viewBox="0 0 24 24">
        <path d="M5 13l5 5L20 5" />
      </svg>
    </span>
  );
}
