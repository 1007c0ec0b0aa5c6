'use client';

import { Notice } from '../../_components/notice';
import type { Messages } from '../../_messages/message-keys';
import { usePatient } from '../_patient/patient-context';
import { PhotoPicker } from '../_patient/photo-picker';
import type { PhotoVerdict } from '../../../lib/care/patient-contract';
import type { KeptCheckIn } from '../_queue/kept-check-in';

interface PhotoVerdictNoticeProps {
  readonly kept: KeptCheckIn;
  readonly verdict: PhotoVerdict;
  /** Beside a question: only when the photo has to be taken again. */
  readonly short?: boolean;
  readonly begin: () => Promise<string>;
}

/** "Got it", or one plain sentence on what to change and the camera again. It never says how the toe does. */
export function PhotoVerdictNotice({ kept, verdict, short = false, begin }: PhotoVerdictNoticeProps) {
  const { messages, online, sending } = usePatient();
  const { photo } = kept;
  if (photo === null) {
    if (short) return null;
    return <PhotoPicker kind="toe" label={messages.photo.take} begin={begin} />;
  }
  if (verdict.state === 'retake') {
    return (
      <Notice live title={messages.photo.retake}>
        <p>{gateSentence(messages, verdict.gates)}</p>
        <PhotoPicker kind="toe" main={!short} camera label={messages.photo.again} begin={begin} />
        <p>{messages.photo.retakeOr}</p>
      </Notice>
    );
  }
  if (short) return null;
  const waiting = photo.complete ? messages.photo.checking : online || sending ? messages.photo.sending : messages.photo.offline;
  return (
    <Notice live>
      <p>{verdict.state === 'waiting' ? waiting : messages.photo[verdict.state]}</p>
    </Notice>
  );
}

/** One sentence: the first gate is the one to mend. A gate this page does not know yet is asked for in general. */
const gateSentence = ({ gates, photo }: Messages, ids: readonly string[]): string => {
  const known = ids.find((id): id is keyof Messages['gates'] => id in gates);
  return known === undefined ? photo.tips.join(' ') : gates[known];
};
