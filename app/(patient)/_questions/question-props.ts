import type { Answers } from '../../../lib/care/answers';
import type { PatientState } from '../../../lib/care/patient-contract';

/** What each question gets: the answers so far, and how to write down new ones. */
export interface QuestionProps {
  readonly answers: Answers;
  readonly worry: string;
  readonly askEveryTime: PatientState['askEveryTime'];
  readonly hoursSince: number;
  readonly change: (answers: Answers) => void;
  readonly changeWorry: (worry: string) => void;
}
