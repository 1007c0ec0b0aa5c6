'use client';

import type { ReactNode } from 'react';
import { Button, ButtonLink } from '../../_components/button';
import { GridPaper } from '../../_components/grid-paper';
import { Notice } from '../../_components/notice';
import type { Answers } from '../../../lib/care/answers';
import { dueNow } from '../../../lib/care/due-now';
import type { PatientState } from '../../../lib/care/patient-contract';
import { usePatient } from '../_patient/patient-context';
import { PatientPage } from '../_patient/patient-page';
import styles from '../_patient/patient.module.css';
import { PenTimer } from '../_patient/pen-timer';
import { PhotoPicker } from '../_patient/photo-picker';
import { ReceivedStep } from '../_patient/received-step';
import { sayWhen } from '../_patient/say-when';
import { StepTitle } from '../_patient/step-title';
import { useDraft, type Draft } from '../_patient/use-draft';
import { useNow } from '../_patient/use-now';
import { telLink, WhoToCall } from '../_patient/who-to-call';
import { secondsLeft } from '../_patient/countdown';

/** How long to press before asking again; common practice. */
const PRESS_MINUTES = 20;

/** The dressing stays on. Blood on it is the commonest worry: press, raise, wait, then say how it is. */
export function FirstDayScreen() {
  return <PatientPage>{(state) => <FirstDay state={state} />}</PatientPage>;
}

interface StepProps {
  readonly state: PatientState;
  readonly draft: Draft;
}

function FirstDay({ state }: { readonly state: PatientState }) {
  const draft = useDraft('firstDay');
  const { kept } = draft;
  if (kept !== null && kept.at !== null) return <Answered state={state} draft={draft} />;
  if (kept === null || kept.step === 0) return <DressingStays state={state} draft={draft} />;
  return <PressAndRaise state={state} draft={draft} />;
}

function DressingStays({ state, draft }: StepProps) {
  const { messages, language, skewMs } = usePatient();
  const now = new Date(useNow(30_000, skewMs)).toISOString();
  const { dressing } = dueNow({ ...state, checkInsAt: [], now, ended: state.closed });
  return (
    <>
      <StepTitle step="stays">{messages.firstDay.title}</StepTitle>
      <GridPaper>
        <p>
          {dressing.staysOn ? messages.firstDay.until(sayWhen(dressing.until, 'time', language, state.timeZone)) : messages.firstDay.over}
        </p>
      </GridPaper>
      <p>{messages.firstDay.common}</p>
      <Button look="main" onClick={() => void draft.change({ step: 1 })}>
        {messages.firstDay.worry}
      </Button>
      <WhoToCall clinic={state.clinic} />
      <ButtonLink look="plain" href="/today">
        {messages.steps.toToday}
      </ButtonLink>
    </>
  );
}

function PressAndRaise({ state, draft }: StepProps) {
  const { messages, skewMs } = usePatient();
  const { kept, change, send } = draft;
  const startedAtMs = kept?.timerStartedAtMs ?? null;
  const nowMs = useNow(1_000, skewMs) - skewMs;
  const over = startedAtMs !== null && secondsLeft(startedAtMs, PRESS_MINUTES, nowMs) === 0;
  const answer = async (answers: Answers) => {
    await change({ answers, step: 2 });
    await send();
  };
  return (
    <>
      <StepTitle step={over ? 'ask' : 'press'}>{over ? messages.firstDay.askTitle : messages.firstDay.pressTitle}</StepTitle>
      {over ? null : (
        <ol className={`${styles.list} ${styles.numbered}`}>
          {messages.firstDay.press.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      )}
      {startedAtMs === null ? (
        <Button look="main" onClick={() => void change({ timerStartedAtMs: Date.now() })}>
          {messages.firstDay.start}
        </Button>
      ) : over ? null : (
        <GridPaper>
          <PenTimer startedAtMs={startedAtMs} minutes={PRESS_MINUTES} over={messages.firstDay.askTitle} />
        </GridPaper>
      )}
      {over ? (
        <StillBleeding answer={answer} />
      ) : (
        <Button look="wide" onClick={() => void answer({ bloodRuns: true })}>
          {messages.firstDay.soaking}
        </Button>
      )}
      <DressingPhoto draft={draft} />
      {over ? null : (
        <Button look="plain" onClick={() => void change({ timerStartedAtMs: Date.now() - PRESS_MINUTES * 60_000 })}>
          {messages.firstDay.askEarly}
        </Button>
      )}
      <WhoToCall clinic={state.clinic} />
    </>
  );
}

function StillBleeding({ answer }: { readonly answer: (answers: Answers) => Promise<void> }) {
  const { messages } = usePatient();
  return (
    <div className={styles.bottom}>
      <Button look="main" onClick={() => void answer({ bleedingAfterPressure: true })}>
        {messages.firstDay.still}
      </Button>
      <Button look="wide" onClick={() => void answer({ bleedingAfterPressure: false })}>
        {messages.firstDay.stopped}
      </Button>
    </div>
  );
}

function DressingPhoto({ draft: { kept, change } }: { readonly draft: Draft }) {
  const { messages } = usePatient();
  if (kept?.photo) {
    return (
      <Notice live>
        <p>{messages.firstDay.photoKept}</p>
      </Notice>
    );
  }
  return (
    <div>
      <PhotoPicker kind="dressing" camera label={messages.firstDay.photo} begin={() => change({})} />
      <p className={styles.soft}>{messages.firstDay.photoHint}</p>
    </div>
  );
}

/** Sent, or on its way. Whom to call stands first and does not wait for any receipt. */
function Answered({ state, draft }: StepProps) {
  const { messages } = usePatient();
  const { kept, leave } = draft;
  if (kept === null) return null;
  return (
    <>
      {kept.answers.bloodRuns === true ? (
        <CallForBlood>
          <CallEmergency clinic={state.clinic} />
          <CallClinic clinic={state.clinic} />
        </CallForBlood>
      ) : kept.answers.bleedingAfterPressure === true ? (
        <CallForBlood>
          <CallClinic clinic={state.clinic} />
          <p>{messages.firstDay.ifClosed(state.clinic.emergencyPhone)}</p>
          <CallEmergency clinic={state.clinic} />
        </CallForBlood>
      ) : (
        <Notice>
          <p>{messages.firstDay.stoppedText}</p>
        </Notice>
      )}
      <ReceivedStep kept={kept} state={state} leave={leave} />
    </>
  );
}

function CallForBlood({ children }: { readonly children: ReactNode }) {
  const { messages } = usePatient();
  return (
    <Notice urgent title={messages.firstDay.stillTitle}>
      <p>{messages.firstDay.stillText}</p>
      {children}
    </Notice>
  );
}

interface CallProps {
  readonly clinic: PatientState['clinic'];
}

function CallClinic({ clinic }: CallProps) {
  const { messages } = usePatient();
  return (
    <ButtonLink look="wide" href={telLink(clinic.phone)}>
      {messages.clinic.phone(clinic.name)}, {clinic.phone}
    </ButtonLink>
  );
}

function CallEmergency({ clinic }: CallProps) {
  const { messages } = usePatient();
  return (
    <ButtonLink look="wide" href={telLink(clinic.emergencyPhone)}>
      {messages.warning.emergency(clinic.emergencyPhone)}
    </ButtonLink>
  );
}
