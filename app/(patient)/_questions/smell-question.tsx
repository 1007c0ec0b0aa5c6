'use client';

import { usePatient } from '../_patient/patient-context';
import type { QuestionProps } from './question-props';
import { YesNo } from './yes-no';

export function SmellQuestion({ answers, change }: QuestionProps) {
  const { smell: text } = usePatient().messages.questions;
  return <YesNo titled legend={text.title} value={answers.smell} onChange={(smell) => change({ ...answers, smell })} />;
}
