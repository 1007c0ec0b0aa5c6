'use client';

import type { ReactNode } from 'react';
import { Button } from '../../_components/button';
import { Notice } from '../../_components/notice';
import { Page } from '../../_components/page';
import type { PatientState } from '../../../lib/care/patient-contract';
import { BirthYear } from './birth-year';
import { usePatient } from './patient-context';
import { UnsentNotice } from './unsent-notice';
import { WhoToCall } from './who-to-call';

/** The sheet all of the patient's screens are written on; it says itself when there is nothing to write. */
export function PatientPage({ children }: { readonly children: (state: PatientState) => ReactNode }) {
  const { access, state, messages, language, setLanguage, online, reload } = usePatient();
  const other = language === 'en' ? 'es' : 'en';
  const switcher = (
    <Button look="plain" lang={other} onClick={() => setLanguage(other)}>
      {messages.otherLanguage}
    </Button>
  );
  return (
    <Page name={state?.clinic.name ?? messages.title} aside={switcher} foot={messages.foot}>
      {online || state === null ? null : (
        <Notice live title={messages.offline.title}>
          <p>{messages.offline.text}</p>
        </Notice>
      )}
      {state === null ? <NothingYet access={access} reload={reload} /> : state.closed ? <Closed state={state} /> : children(state)}
    </Page>
  );
}

function NothingYet({ access, reload }: { readonly access: string; readonly reload: () => void }) {
  const { messages } = usePatient();
  if (access === 'opening') return <h1>{messages.loading}</h1>;
  if (access === 'birthYearOwed') return <BirthYear />;
  const { title, text } = access === 'noAccess' ? messages.noAccess : messages.noState;
  return (
    <>
      <h1>{title}</h1>
      <p>{text}</p>
      <Button onClick={reload}>{messages.noState.again}</Button>
    </>
  );
}

function Closed({ state }: { readonly state: PatientState }) {
  const { messages } = usePatient();
  return (
    <>
      <h1>{messages.closed.title}</h1>
      <p>{messages.closed.text}</p>
      <UnsentNotice />
      <WhoToCall clinic={state.clinic} />
    </>
  );
}
