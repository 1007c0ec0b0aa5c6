'use client';

import { useState } from 'react';
import { Button } from '../../_components/button';
import { Field } from '../../_components/field';
import type { Answers } from '../../../lib/care/answers';
import { usePatient } from '../_patient/patient-context';
import { followUps } from './asked-signs';
import type { QuestionProps } from './question-props';
import { readTemperature } from './read-temperature';
import { YesNo } from './yes-no';

export function FeverQuestion({ answers, askEveryTime, change }: QuestionProps) {
  const { fever: text } = usePatient().messages.questions;
  return (
    <>
      <YesNo titled legend={text.title} value={answers.chills} onChange={(chills) => change({ ...answers, chills })} />
      <Temperature answers={answers} change={change} />
      {followUps(answers, askEveryTime).confusion ? (
        <YesNo
          legend={text.confusion}
          hint={text.confusionHint}
          value={answers.confusion}
          onChange={(confusion) => change({ ...answers, confusion })}
        />
      ) : null}
    </>
  );
}

/** Only a temperature a body can have is written down; anything else is asked about. */
function Temperature({ answers, change }: Pick<QuestionProps, 'answers' | 'change'>) {
  const { messages, language } = usePatient();
  const { fever: text } = messages.questions;
  const shown = (celsius: number) => celsius.toLocaleString(language);
  const [typed, setTyped] = useState(answers.feverC === undefined ? '' : shown(answers.feverC));
  const read = readTemperature(typed);
  const type = (next: string) => {
    setTyped(next);
    const now = readTemperature(next);
    const { feverC: _before, ...rest } = answers;
    const changed: Answers = now.kind === 'celsius' ? { ...rest, feverC: now.celsius } : rest;
    if (changed.feverC !== answers.feverC) change(changed);
  };
  const wrong =
    read.kind === 'fahrenheit' ? (
      <>
        <p>{text.fahrenheit(typed)}</p>
        <Button onClick={() => type(shown(read.celsius))}>{text.fahrenheitYes(shown(read.celsius))}</Button>
      </>
    ) : read.kind === 'outside' && typed.trim().length > 1 ? (
      text.outside
    ) : undefined;
  return <Field numeric label={text.temperature} hint={text.temperatureHint} wrong={wrong} value={typed} onChange={type} maxLength={8} />;
}
