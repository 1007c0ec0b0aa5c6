'use client';

import { Button } from '../../_components/button';
import { GridPaper } from '../../_components/grid-paper';
import type { PatientState } from '../../../lib/care/patient-contract';
import type { KeptCheckIn } from '../_queue/kept-check-in';
import { nextCheckInMs } from './next-check-in';
import { usePatient } from './patient-context';
import styles from './patient.module.css';
import { sayWhen } from './say-when';
import { StepTitle } from './step-title';
import { UnsentNotice } from './unsent-notice';
import { WhoToCall } from './who-to-call';

interface ReceivedStepProps {
  readonly kept: KeptCheckIn;
  readonly state: PatientState;
  readonly leave: () => Promise<void>;
  /** Was the photo to be taken again, and was not? */
  readonly cannotMeasure?: boolean;
}

/** What was received, what happens next, whom to call; nothing about how the toe does. */
export function ReceivedStep({ kept, state, leave, cannotMeasure = false }: ReceivedStepProps) {
  const { messages, language, sending } = usePatient();
  const when = (instant: string | number, kind: 'day' | 'time') => sayWhen(instant, kind, language, state.timeZone);
  const { receipt } = kept;
  const waiting = sending ? messages.received.sendingTitle : messages.received.keptTitle;
  const title = receipt ? messages.received.title : waiting;
  const goOn = async () => {
    await leave();
    window.location.assign('/today');
  };
  return (
    <>
      <StepTitle step={`received ${receipt !== null}`}>{title}</StepTitle>
      {receipt ? (
        <GridPaper>
          <p>{messages.received.at(when(receipt.receivedAt, 'time'))}</p>
          <p>{kept.photo === null ? messages.received.withoutPhoto : cannotMeasure ? messages.received.withUnmeasuredPhoto : messages.received.withPhoto}</p>
        </GridPaper>
      ) : (
        <UnsentNotice />
      )}
      <section className={styles.section}>
        <h2>{messages.received.next}</h2>
        <p>{messages.received.nextText}</p>
        {receipt ? <p>{messages.received.nextDue(when(nextCheckInMs({ ...state, received: [...state.received, { clientId: kept.clientId, at: receipt.receivedAt, kind: kept.kind }] }), 'day'))}</p> : null}
        <p>{messages.received.worse}</p>
      </section>
      <WhoToCall clinic={state.clinic} />
      <Button look="wide" onClick={() => void goOn()}>
        {messages.steps.toToday}
      </Button>
    </>
  );
}
