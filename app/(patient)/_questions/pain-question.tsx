'use client';

import { Choice } from '../../_components/choice';
import { GridPaper } from '../../_components/grid-paper';
import { usePatient } from '../_patient/patient-context';
import { followUps } from './asked-signs';
import type { QuestionProps } from './question-props';
import { YesNo } from './yes-no';

const NUMBERS = Array.from({ length: 11 }, (_, pain) => ({ value: String(pain), label: pain }));

export function PainQuestion({ answers, askEveryTime, change }: QuestionProps) {
  const { pain: text } = usePatient().messages.questions;
  return (
    <>
      <GridPaper>
        <Choice
          row
          titled
          legend={text.title}
          hint={text.hint}
          options={NUMBERS}
          chosen={answers.pain === undefined ? [] : [String(answers.pain)]}
          onChoose={(pain) => change({ ...answers, pain: Number(pain) })}
        />
      </GridPaper>
      {followUps(answers, askEveryTime).outOfProportion ? (
        <YesNo
          legend={text.outOfProportion}
          hint={text.outOfProportionHint}
          value={answers.painOutOfProportion}
          onChange={(painOutOfProportion) => change({ ...answers, painOutOfProportion })}
        />
      ) : null}
    </>
  );
}
