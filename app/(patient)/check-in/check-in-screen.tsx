'use client';

import { Button } from '../../_components/button';
import { hoursBetweenInstants } from '../../../lib/care/instant';
import type { Answers } from '../../../lib/care/answers';
import type { PatientState, PhotoVerdict } from '../../../lib/care/patient-contract';
import { CallNow } from '../_patient/call-now';
import { usePatient } from '../_patient/patient-context';
import { PatientPage } from '../_patient/patient-page';
import styles from '../_patient/patient.module.css';
import { ReceivedStep } from '../_patient/received-step';
import { StepTitle } from '../_patient/step-title';
import { useDraft, type Draft } from '../_patient/use-draft';
import { QUESTIONS } from '../_questions/questions';
import { warningSigns } from '../_questions/warning-signs';
import { PhotoStep } from './photo-step';
import { PhotoVerdictNotice } from './photo-verdict-notice';
import { useVerdict } from './use-verdict';

/** Photo first, six questions after it, then what was received. One thing on the screen at a time. */
export function CheckInScreen() {
  return <PatientPage>{(state) => <CheckIn state={state} />}</PatientPage>;
}

function CheckIn({ state }: { readonly state: PatientState }) {
  const { skewMs } = usePatient();
  const draft = useDraft('daily');
  const { kept } = draft;
  const hoursSince = hoursBetweenInstants(state.procedureAt, new Date(Date.now() + skewMs).toISOString());
  const callNow = warningSigns(kept?.answers ?? {}, hoursSince).length > 0 || kept?.receipt?.callNow === true;
  return (
    <>
      {callNow ? <CallNow clinic={state.clinic} /> : null}
      <Step state={state} draft={draft} hoursSince={hoursSince} />
    </>
  );
}

function Step({ state, draft, hoursSince }: { readonly state: PatientState; readonly draft: Draft; readonly hoursSince: number }) {
  const { kept, change } = draft;
  const verdict = useVerdict(kept);
  if (kept !== null && kept.at !== null) return <ReceivedStep kept={kept} state={state} leave={draft.leave} cannotMeasure={verdict.state === 'retake'} />;
  const step = kept?.step ?? 0;
  if (step === 0) return <PhotoStep draft={draft} verdict={verdict} state={state} />;
  const { title, Question } = QUESTIONS[step - 1];
  return (
    <QuestionFrame draft={draft} verdict={verdict} step={step} title={title}>
      <Question
        key={step}
        answers={kept?.answers ?? {}}
        worry={kept?.worry ?? ''}
        askEveryTime={state.askEveryTime}
        hoursSince={hoursSince}
        change={(answers: Answers) => void change({ answers })}
        changeWorry={(worry) => void change({ worry })}
      />
    </QuestionFrame>
  );
}

interface QuestionFrameProps {
  readonly draft: Draft;
  readonly verdict: PhotoVerdict;
  readonly step: number;
  readonly title: (typeof QUESTIONS)[number]['title'];
  readonly children: React.ReactNode;
}

function QuestionFrame({ draft, verdict, step, title, children }: QuestionFrameProps) {
  const { messages } = usePatient();
  const { change, kept } = draft;
  const last = step === QUESTIONS.length;
  return (
    <>
      <p className={styles.soft}>{messages.steps.of(step, QUESTIONS.length)}</p>
      <StepTitle step={`question ${step}`}>{title(messages)}</StepTitle>
      {children}
      <div className={styles.bottom}>
        {kept ? <PhotoVerdictNotice kept={kept} verdict={verdict} short={!last} begin={() => change({})} /> : null}
        <Button look="main" onClick={() => void (last ? draft.send() : change({ step: step + 1 }))}>
          {last ? messages.send : messages.steps.next}
        </Button>
        <Button look="plain" onClick={() => void change({ step: step - 1 })}>
          {messages.steps.back}
        </Button>
      </div>
    </>
  );
}
