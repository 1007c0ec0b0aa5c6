'use client';

import { useId, useState, type ReactNode } from 'react';
import { Notice } from '../../_components/notice';
import buttonStyles from '../../_components/button.module.css';
import type { PhotoKind } from '../../../lib/care/patient-contract';
import { keepPhoto, type PhotoTrouble } from '../_queue/keep-photo';
import { usePatient } from './patient-context';
import styles from './photo-picker.module.css';

/** JPEG first: asked for it, most phones convert by themselves. What comes is looked at all the same. */
const ACCEPT = 'image/jpeg,image/png,image/heic,image/heif';

interface PhotoPickerProps {
  readonly kind: PhotoKind;
  readonly label: ReactNode;
  /** The one thing to do here, or one of several. */
  readonly main?: boolean;
  /** Straight into the camera; otherwise the phone's pictures are offered too. */
  readonly camera?: boolean;
  /** Names the check-in before its photo is kept. */
  readonly begin: () => Promise<string>;
}

/** Opens the phone's own camera. The photo lies on the phone, read back, before anything else happens with it. */
export function PhotoPicker({ kind, label, main = false, camera = false, begin }: PhotoPickerProps) {
  const { messages } = usePatient();
  const id = useId();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<PhotoTrouble>(null);

  const pick = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    setBusy(true);
    setTrouble(await begin().then((clientId) => keepPhoto(clientId, kind, file), () => 'notKept' as const));
    setBusy(false);
    // The same picture may be picked again.
    input.value = '';
  };

  return (
    <div className={styles.picker}>
      <input
        id={id}
        className={styles.input}
        type="file"
        accept={ACCEPT}
        {...(camera ? { capture: 'environment' as const } : {})}
        disabled={busy}
        onChange={(event) => void pick(event.target)}
      />
      <label htmlFor={id} className={`${buttonStyles.button} ${main ? buttonStyles.main : buttonStyles.wide} ${styles.label}`}>
        {busy ? messages.photo.keeping : label}
      </label>
      <div role="alert">{trouble === null ? null : <Notice title={messages.photo[trouble]} />}</div>
    </div>
  );
}
