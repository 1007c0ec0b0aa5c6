'use client';

import { useEffect, useState } from 'react';
import { usePatient } from '../_patient/patient-context';
import type { KeptPhoto } from '../_queue/kept-check-in';
import { phoneStore } from '../_queue/phone-store';
import { photoPieces } from '../_queue/photo-pieces';
import styles from './photo-preview.module.css';

/** The photo as it lies on the phone. Pictures this browser cannot draw (HEIC in most) are named, not shown. */
export function PhotoPreview({ clientId, photo }: { readonly clientId: string; readonly photo: KeptPhoto }) {
  const { messages } = usePatient();
  const [url, setUrl] = useState<string | null>(null);
  const { sha256, lengthBytes, mediaType } = photo;
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    const pieces = photoPieces(lengthBytes).map((_, index) => phoneStore.piece(clientId, sha256, index));
    void Promise.all(pieces).then((read) => {
      if (gone || read.includes(undefined)) return;
      made = URL.createObjectURL(new Blob(read as ArrayBuffer[], { type: mediaType }));
      setUrl(made);
    });
    return () => {
      gone = true;
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [clientId, sha256, lengthBytes, mediaType]);
  if (url === null) return null;
  return <img className={styles.photo} src={url} alt={messages.photo.yours} onError={() => setUrl(null)} />;
}
