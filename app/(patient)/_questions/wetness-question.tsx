'use client';

import { Choice } from '../../_components/choice';
import type { Answers } from '../../../lib/care/answers';
import { usePatient } from '../_patient/patient-context';
import { followUps } from './asked-signs';
import type { QuestionProps } from './question-props';

/** What was said about discharge goes with the wetness it was said about. */
function withWetness({ dischargeColour, dischargeConsistency, ...rest }: Answers, wetness: 'dry' | 'damp' | 'wet'): Answers {
  return wetness === 'dry' ? { ...rest, wetness } : { ...rest, dischargeColour, dischargeConsistency, wetness };
}

const labelled = <Value extends string>(labels: Readonly<Record<Value, string>>) =>
  (Object.keys(labels) as Value[]).map((value) => ({ value, label: labels[value] }));

export function WetnessQuestion({ answers, askEveryTime, change }: QuestionProps) {
  const { wetness: text } = usePatient().messages.questions;
  const { wetness, dischargeColour, dischargeConsistency } = answers;
  return (
    <>
      <Choice
        titled
        legend={text.title}
        options={labelled(text.options)}
        chosen={wetness === undefined ? [] : [wetness]}
        onChoose={(chosen) => change(withWetness(answers, chosen))}
      />
      {followUps(answers, askEveryTime).discharge ? (
        <>
          <Choice
            legend={text.colour}
            options={labelled(text.colours)}
            chosen={dischargeColour === undefined || dischargeColour === 'none' ? [] : [dischargeColour]}
            onChoose={(chosen) => change({ ...answers, dischargeColour: chosen })}
          />
          <Choice
            legend={text.consistency}
            options={labelled(text.consistencies)}
            chosen={dischargeConsistency === undefined || dischargeConsistency === 'none' ? [] : [dischargeConsistency]}
            onChoose={(chosen) => change({ ...answers, dischargeConsistency: chosen })}
          />
        </>
      ) : null}
    </>
  );
}
