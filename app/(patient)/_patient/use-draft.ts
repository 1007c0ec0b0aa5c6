import { useCallback } from 'react';
import { newCheckIn, type KeptCheckIn } from '../_queue/kept-check-in';
import { localInstant } from '../_queue/local-instant';
import { phoneStore } from '../_queue/phone-store';
import { usePatient } from './patient-context';

export interface Draft {
  /** The one on the screen: being filled in, or sent and still shown. Null before the first touch. */
  readonly kept: KeptCheckIn | null;
  /** Writes a change down at once; the first touch names the check-in. */
  readonly change: (change: Partial<KeptCheckIn>) => Promise<string>;
  /** Send was pressed. Pressed again it changes nothing: neither the time nor the id. */
  readonly send: () => Promise<void>;
  /** What is on the screen was read: the next one begins anew. What is not sent yet stays. */
  readonly leave: () => Promise<void>;
}

/** The check-in of one kind that this phone has in hand. */
export function useDraft(kind: KeptCheckIn['kind']): Draft {
  const { checkIns, write, state, sendNow } = usePatient();
  const owner = state?.procedureAt ?? '';
  const mine = checkIns.filter((one) => one.kind === kind);
  const kept = mine.find(({ at }) => at === null) ?? mine.find(({ step }) => step !== LEFT) ?? null;
  const clientId = kept?.clientId;

  const change = useCallback(
    async (changed: Partial<KeptCheckIn>) => {
      const shown = { ...(kept ?? newCheckIn(crypto.randomUUID(), owner, kind)), ...changed };
      await write(shown, () =>
        kept === null ? phoneStore.add(shown) : phoneStore.update(shown.clientId, (latest) => ({ ...latest, ...changed })),
      );
      return shown.clientId;
    },
    [kept, write, owner, kind],
  );

  const send = useCallback(async () => {
    if (clientId === undefined) return;
    const pressed = localInstant(Date.now());
    await phoneStore.update(clientId, (latest) => ({ ...latest, at: latest.at ?? pressed }));
    sendNow();
  }, [clientId, sendNow]);

  const leave = useCallback(async () => {
    if (kept === null || kept.at === null) return;
    if (kept.receipt === null) await phoneStore.update(kept.clientId, (latest) => ({ ...latest, step: LEFT }));
    else await phoneStore.remove(kept.clientId);
  }, [kept]);

  return { kept, change, send, leave };
}

/** The step of a check-in that waits to be sent while the person has gone on. */
const LEFT = -1;
