'use client';

import { Button } from '../../_components/button';
import { Notice } from '../../_components/notice';
import { isUnsent } from '../_queue/kept-check-in';
import { usePatient } from './patient-context';

/** How many check-ins lie on this phone and not at the clinic, with a button to try now. */
export function UnsentNotice() {
  const { checkIns, messages, sending, sendNow } = usePatient();
  const unsent = checkIns.filter(isUnsent);
  if (unsent.length === 0) return null;
  const refused = unsent.find(({ refusedStatus }) => refusedStatus !== null)?.refusedStatus;
  return (
    <Notice live title={messages.unsent.title(unsent.length)}>
      <p>{refused ? messages.unsent.failed(refused) : messages.unsent.kept}</p>
      <Button look="wide" aria-disabled={sending} onClick={() => sending || sendNow()}>
        {sending ? messages.unsent.sending : messages.unsent.now}
      </Button>
    </Notice>
  );
}
