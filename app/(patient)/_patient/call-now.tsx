'use client';

import { useEffect, useRef } from 'react';
import { ButtonLink } from '../../_components/button';
import { Notice } from '../../_components/notice';
import type { PatientState } from '../../../lib/care/patient-contract';
import { usePatient } from './patient-context';
import { telLink } from './who-to-call';

/** What a warning sign means, said at once and without any analysis: whom to call. It comes into view by itself. */
export function CallNow({ clinic }: { readonly clinic: PatientState['clinic'] }) {
  const { messages } = usePatient();
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => place.current?.scrollIntoView({ block: 'start' }), []);
  return (
    <div ref={place}>
      <Notice urgent title={messages.warning.title}>
        <p>{messages.warning.text}</p>
        <ButtonLink look="wide" href={telLink(clinic.emergencyPhone)}>
          {messages.warning.emergency(clinic.emergencyPhone)}
        </ButtonLink>
        <ButtonLink look="wide" href={telLink(clinic.phone)}>
          {messages.warning.clinic(clinic.name)}, {clinic.phone}
        </ButtonLink>
        <p>{messages.warning.stillSend}</p>
      </Notice>
    </div>
  );
}
