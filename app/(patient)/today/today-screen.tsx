'use client';

import { useEffect } from 'react';
import { ButtonLink, type ButtonLook } from '../../_components/button';
import { GridPaper } from '../../_components/grid-paper';
import { dueNow } from '../../../lib/care/due-now';
import type { PatientState } from '../../../lib/care/patient-contract';
import { nextCheckInMs } from '../_patient/next-check-in';
import { usePatient } from '../_patient/patient-context';
import { PatientPage } from '../_patient/patient-page';
import styles from '../_patient/patient.module.css';
import { sayWhen } from '../_patient/say-when';
import { UnsentNotice } from '../_patient/unsent-notice';
import { useDraft } from '../_patient/use-draft';
import { useNow } from '../_patient/use-now';
import { WhoToCall } from '../_patient/who-to-call';
import { DayStrip } from './day-strip';
import { SoakTimer } from './soak-timer';

/** After it there is nothing left to put there. */
const LAST_DAY_IN_CALENDAR = 13;

/** Which day it is, what the clinic's plan asks for, and one large button. */
export function TodayScreen() {
  return <PatientPage>{(state) => <Today state={state} />}</PatientPage>;
}

function Today({ state }: { readonly state: PatientState }) {
  const { messages, language, skewMs } = usePatient();
  const now = new Date(useNow(30_000, skewMs)).toISOString();
  const due = dueNow({ ...state, checkInsAt: state.received.map(({ at }) => at), now, ended: state.closed });
  const { kept: draft, leave } = useDraft('daily');
  const { kept: bleeding, leave: leaveFirstDay } = useDraft('firstDay');
  useEffect(() => void leave(), [leave]);
  useEffect(() => void leaveFirstDay(), [leaveFirstDay]);
  const firstDay = due.dressing.staysOn || bleeding?.at === null;
  const begun = draft !== null && draft.at === null;
  // While nothing is due, what is begun by oneself is no task: on the first day blood is what matters.
  const waits = due.checkIn.state === 'notYet' && !begun;

  return (
    <>
      <GridPaper>
        <h1>{due.day === 0 ? messages.today.dayZero : messages.today.day(due.day)}</h1>
        {due.day === 0 ? null : <p>{messages.today.since(sayWhen(state.procedureAt, 'day', language, state.timeZone))}</p>}
        <DayStrip day={due.day} state={state} />
      </GridPaper>
      <UnsentNotice />
      {firstDay && waits ? <Bleeding look="main" /> : null}
      <ButtonLink look={waits ? 'wide' : 'main'} href="/check-in">
        {begun ? messages.today.resume : waits ? messages.today.startBefore : messages.today.start}
      </ButtonLink>
      {firstDay && !waits ? <Bleeding look="wide" /> : null}
      <DueList state={state} due={due} />
      {due.soaks?.minutes ? <SoakTimer minutes={due.soaks.minutes} /> : null}
      <ClinicMessages state={state} />
      <WhoToCall clinic={state.clinic} />
      {firstDay ? null : <Bleeding look="plain" />}
    </>
  );
}

function Bleeding({ look }: { readonly look: ButtonLook }) {
  const { messages } = usePatient();
  return (
    <ButtonLink look={look} href="/first-day">
      {messages.today.bleeding}
    </ButtonLink>
  );
}

function DueList({ state, due }: { readonly state: PatientState; readonly due: ReturnType<typeof dueNow> }) {
  const { messages, language } = usePatient();
  const when = (instant: string | number, kind: 'day' | 'time') => sayWhen(instant, kind, language, state.timeZone);
  return (
    <section className={styles.section} aria-labelledby="due">
      <h2 id="due">{messages.today.due}</h2>
      <ul className={styles.list}>
        {due.dressing.staysOn ? <li>{messages.today.dressingStays(when(due.dressing.until, 'time'))}</li> : null}
        {due.soaks?.minutes ? <li>{messages.today.soaks(due.soaks.perDay, due.soaks.minutes)}</li> : null}
        {due.soaks && state.plan.coverBetweenSoaks ? <li>{messages.today.cover}</li> : null}
        <li>{due.checkIn.state === 'notYet' ? messages.today.checkInNext(when(nextCheckInMs(state), 'day')) : messages.today.checkInDue}</li>
        {state.plan.notes === '' ? null : <li>{state.plan.notes}</li>}
      </ul>
      <p className={styles.soft}>{messages.today.fromPlan}</p>
      {due.checkIn.state === 'ended' || due.day > LAST_DAY_IN_CALENDAR ? null : (
        <ButtonLink look="plain" href="/api/patient/calendar" download>
          {messages.today.calendar}
        </ButtonLink>
      )}
    </section>
  );
}

function ClinicMessages({ state }: { readonly state: PatientState }) {
  const { messages, language } = usePatient();
  return (
    <section className={styles.section} aria-labelledby="messages">
      <h2 id="messages">{messages.today.messages}</h2>
      {state.messages.length === 0 ? <p>{messages.today.messagesNone}</p> : null}
      {state.messages.map(({ at, text }) => (
        <div key={at}>
          <p>{text}</p>
          <p className={styles.soft}>{sayWhen(at, 'time', language, state.timeZone)}</p>
        </div>
      ))}
    </section>
  );
}
