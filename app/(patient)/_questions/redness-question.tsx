'use client';

import { usePatient } from '../_patient/patient-context';
import { followUps } from './asked-signs';
import type { QuestionProps } from './question-props';
import { YesNo } from './yes-no';

export function RednessQuestion({ answers, askEveryTime, change }: QuestionProps) {
  const { redness: text } = usePatient().messages.questions;
  const asked = followUps(answers, askEveryTime);
  return (
    <>
      <YesNo titled legend={text.title} value={answers.streaks} onChange={(streaks) => change({ ...answers, streaks })} />
      <YesNo legend={text.spreading} value={answers.spreadingSeen} onChange={(spreadingSeen) => change({ ...answers, spreadingSeen })} />
      {asked.swelling ? (
        <YesNo legend={text.swelling} value={answers.swelling} onChange={(swelling) => change({ ...answers, swelling })} />
      ) : null}
      {asked.warmth ? <YesNo legend={text.warmth} value={answers.warmth} onChange={(warmth) => change({ ...answers, warmth })} /> : null}
    </>
  );
}
