'use client';

import type { ReactNode } from 'react';
import { Choice } from '../../_components/choice';
import { usePatient } from '../_patient/patient-context';

interface YesNoProps {
  readonly legend: ReactNode;
  /** The title of the page has said it already: only for screen readers. */
  readonly titled?: boolean;
  readonly hint?: ReactNode;
  /** Undefined: not answered, which is not a "no". */
  readonly value: boolean | undefined;
  readonly onChange: (value: boolean) => void;
}

export function YesNo({ legend, titled, hint, value, onChange }: YesNoProps) {
  const { messages } = usePatient();
  return (
    <Choice
      legend={legend}
      titled={titled}
      hint={hint}
      options={[
        { value: 'yes', label: messages.yes },
        { value: 'no', label: messages.no },
      ]}
      chosen={value === undefined ? [] : [value ? 'yes' : 'no']}
      onChoose={(chosen) => onChange(chosen === 'yes')}
    />
  );
}
