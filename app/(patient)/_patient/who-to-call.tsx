'use client';

import { ButtonLink } from '../../_components/button';
import type { PatientState } from '../../../lib/care/patient-contract';
import { usePatient } from './patient-context';
import styles from './patient.module.css';

/** A number as a phone dials it. */
export const telLink = (phone: string): string => `tel:${phone.replace(/[^+\d]/g, '')}`;

/** The clinic's number with its hours, and the emergency number. */
export function WhoToCall({ clinic }: { readonly clinic: PatientState['clinic'] }) {
  const { messages } = usePatient();
  return (
    <section className={styles.section} aria-labelledby="who-to-call">
      <h2 id="who-to-call">{messages.clinic.title}</h2>
      <ButtonLink look="wide" href={telLink(clinic.phone)}>
        {messages.clinic.phone(clinic.name)}
        <br />
        {clinic.phone}
      </ButtonLink>
      <p className={styles.soft}>{messages.clinic.hours(clinic.openingHours)}</p>
      <ButtonLink look="wide" href={telLink(clinic.emergencyPhone)}>
        {messages.clinic.emergency(clinic.emergencyPhone)}
      </ButtonLink>
    </section>
  );
}
