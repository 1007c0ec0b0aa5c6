'use client';

import { useId } from 'react';
import fieldStyles from '../../../_components/field.module.css';

interface PhotoFieldProps {
  readonly label: string;
  readonly hint: string;
  readonly file: File | undefined;
  readonly onPick: (file: File | undefined) => void;
}

const ACCEPT = 'image/jpeg,image/png,image/heic,image/heif';

/** A photo from this machine, or from the phone that this page is open on. May be left out. */
export function PhotoField({ label, hint, file, onPick }: PhotoFieldProps) {
  const id = useId();
  return (
    <div className={fieldStyles.field}>
      <label className={fieldStyles.label} htmlFor={id}>
        {label}
      </label>
      <span id={`${id}-hint`} className={fieldStyles.hint}>
        {file === undefined ? hint : `${hint} Chosen: ${file.name}`}
      </span>
      <input id={id} className={fieldStyles.input} type="file" accept={ACCEPT} aria-describedby={`${id}-hint`} onChange={(event) => onPick(event.target.files?.[0])} />
    </div>
  );
}
