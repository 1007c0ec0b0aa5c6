'use client';

import { Button } from '../../_components/button';
import type { PhotoVerdict } from '../../../lib/care/patient-contract';
import { usePatient } from '../_patient/patient-context';
import styles from '../_patient/patient.module.css';
import { PhotoPicker } from '../_patient/photo-picker';
import { StepTitle } from '../_patient/step-title';
import type { Draft } from '../_patient/use-draft';
import { CardGuide } from './card-guide';
import { PhotoPreview } from './photo-preview';
import { PhotoVerdictNotice } from './photo-verdict-notice';

/** How to hold card and phone, then the camera; afterwards what the server says about the photo. */
export function PhotoStep({ draft, verdict }: { readonly draft: Draft; readonly verdict: PhotoVerdict }) {
  const { messages } = usePatient();
  const { kept, change } = draft;
  const begin = () => change({});
  const photo = kept?.photo ?? null;
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
