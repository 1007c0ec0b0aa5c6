'use client';

import { Button, ButtonLink } from '../../_components/button';
import { Notice } from '../../_components/notice';
import { dueNow } from '../../../lib/care/due-now';
import type { PatientState, PhotoVerdict } from '../../../lib/care/patient-contract';
import { usePatient } from '../_patient/patient-context';
import styles from '../_patient/patient.module.css';
import { PhotoPicker } from '../_patient/photo-picker';
import { sayWhen } from '../_patient/say-when';
import { StepTitle } from '../_patient/step-title';
import type { Draft } from '../_patient/use-draft';
import { useNow } from '../_patient/use-now';
import { CardGuide } from './card-guide';
import { PhotoPreview } from './photo-preview';
import { PhotoVerdictNotice } from './photo-verdict-notice';

interface PhotoStepProps {
  readonly draft: Draft;
  readonly verdict: PhotoVerdict;
  readonly state: PatientState;
}

/**
 * How to hold card and phone, then the camera; afterwards what the server says about the photo. While the dressing stays
 * on, no photo is asked for: it would be taken off for it.
 */
export function PhotoStep({ draft, verdict, state }: PhotoStepProps) {
  const { messages, language, skewMs } = usePatient();
  const { kept, change } = draft;
  const begin = () => change({});
  const photo = kept?.photo ?? null;
  const now = new Date(useNow(30_000, skewMs)).toISOString();
  const { dressing } = dueNow({ ...state, checkInsAt: [], now, ended: state.closed });
  if (photo === null && dressing.staysOn) {
    return (
      <>
        <StepTitle step="photo">{messages.firstDay.title}</StepTitle>
        <Notice>
          <p>{messages.photo.underDressing(sayWhen(dressing.until, 'time', language, state.timeZone))}</p>
        </Notice>
        <Button look="main" onClick={() => void change({ step: 1 })}>
          {messages.photo.goOn}
        </Button>
        <ButtonLink look="plain" href="/today">
          {messages.steps.toToday}
        </ButtonLink>
      </>
    );
  }
  return (
    <>
      <StepTitle step="photo">{messages.photo.title}</StepTitle>
      {kept && photo ? (
        <>
          <PhotoPreview clientId={kept.clientId} photo={photo} />
          <PhotoVerdictNotice kept={kept} verdict={verdict} begin={begin} />
        </>
      ) : (
        <>
          <CardGuide />
          <ul className={styles.list}>
            {messages.photo.tips.map((tip) => (
              <li key={tip}>{tip}</li>
            ))}
          </ul>
          <PhotoPicker kind="toe" main camera label={messages.photo.take} begin={begin} />
          <PhotoPicker kind="toe" label={messages.photo.choose} begin={begin} />
        </>
      )}
      <Button look={photo === null ? 'plain' : verdict.state === 'retake' ? 'wide' : 'main'} onClick={() => void change({ step: 1 })}>
        {photo ? messages.photo.goOn : messages.photo.without}
      </Button>
    </>
  );
}
