'use client';

import { useState } from 'react';
import { Choice } from '../../_components/choice';
import { Field } from '../../_components/field';
import { usePatient } from '../_patient/patient-context';
import { askedSigns } from './asked-signs';
import type { QuestionProps } from './question-props';
import { tickedSigns, tickSigns, type Tick } from './tick-signs';

/** The longest text the server takes. */
const LONGEST = 2000;

export function WorryQuestion({ answers, worry, hoursSince, change, changeWorry }: QuestionProps) {
  const { worry: text } = usePatient().messages.questions;
  const listed = askedSigns(hoursSince);
  // Typed letters stay here; the phone gets a copy of each.
  const [typed, setTyped] = useState(worry);
  const options: { value: Tick; label: string }[] = listed.map((sign) => ({ value: sign, label: text.signs[sign] }));
  return (
    <>
      <Choice
        many
        titled
        legend={text.title}
        hint={text.hint}
        options={[...options, { value: 'none', label: text.none }]}
        chosen={tickedSigns(answers, listed)}
        onChoose={(tick, on) => change(tickSigns(answers, listed, tick, on))}
      />
      <Field
        long
        label={text.text}
        hint={text.textHint}
        value={typed}
        maxLength={LONGEST}
        onChange={(next) => {
          setTyped(next);
          changeWorry(next);
        }}
      />
    </>
  );
}
