'use client';

import { useEffect, useState } from 'react';
import { Button } from '../../_components/button';
import { GridPaper } from '../../_components/grid-paper';
import { usePatient } from '../_patient/patient-context';
import styles from '../_patient/patient.module.css';
import { PenTimer } from '../_patient/pen-timer';
import { phoneStore } from '../_queue/phone-store';

const KEY = 'soakStartedAtMs';

/** Counts a soak. When it began is written down, so that a call or a locked phone does not stop it. */
export function SoakTimer({ minutes }: { readonly minutes: number }) {
  const { messages } = usePatient();
  const [startedAtMs, setStartedAtMs] = useState<number | null>(null);
  useEffect(() => {
    void phoneStore.read(KEY).then((kept) => typeof kept === 'number' && setStartedAtMs(kept), () => undefined);
  }, []);
  const set = (ms: number | null) => {
    setStartedAtMs(ms);
    void phoneStore.write(KEY, ms).catch(() => undefined);
  };
  return (
    <section className={styles.section} aria-labelledby="soak">
      <h2 id="soak">{messages.soak.title}</h2>
      {startedAtMs === null ? (
        <Button look="wide" onClick={() => set(Date.now())}>
          {messages.soak.start(minutes)}
        </Button>
      ) : (
        <GridPaper>
          <PenTimer startedAtMs={startedAtMs} minutes={minutes} over={messages.soak.over} />
          <Button onClick={() => set(null)}>{messages.soak.stop}</Button>
        </GridPaper>
      )}
    </section>
  );
}
