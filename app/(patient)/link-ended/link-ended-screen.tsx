'use client';

import { Page } from '../../_components/page';
import { usePatient } from '../_patient/patient-context';

/** Where a personal link leads that the clinic has ended, or never gave out. */
export function LinkEndedScreen() {
  const { messages } = usePatient();
  return (
    <Page name={messages.title} foot={messages.foot}>
      <h1>{messages.linkEnded.title}</h1>
      <p>{messages.linkEnded.text}</p>
    </Page>
  );
}
