import { useEffect, useState } from 'react';
import { photoVerdictSchema, type PhotoVerdict } from '../../../lib/care/patient-contract';
import type { KeptCheckIn } from '../_queue/kept-check-in';
import { checkInPath } from '../_queue/send-check-in';

const [QUICK_MS, SLOW_MS, QUICK_TIMES] = [500, 3_000, 20];

async function askVerdict(clientId: string, sha256: string): Promise<PhotoVerdict> {
  try {
    const response = await fetch(`${checkInPath(clientId)}/photo/verdict`, { cache: 'no-store', headers: { 'x-photo-sha256': sha256 } });
    if (response.ok) return photoVerdictSchema.parse(await response.json());
  } catch {
    // Asked again in a moment.
  }
  return { state: 'waiting' };
}

/** The first word on a photo that has arrived; it is asked for until it comes, and stays with its photo. */
export function useVerdict(kept: KeptCheckIn | null): PhotoVerdict {
  const [verdict, setVerdict] = useState<{ of: string; is: PhotoVerdict } | null>(null);
  const clientId = kept?.clientId ?? null;
  // Whoever has sent it and gone on needs no first word any more.
  const sha256 = kept?.at === null && kept.photo?.complete ? kept.photo.sha256 : null;
  useEffect(() => {
    if (clientId === null || sha256 === null) return;
    let timer: ReturnType<typeof setTimeout>;
    let gone = false;
    const ask = async (times: number) => {
      const is = await askVerdict(clientId, sha256);
      if (gone) return;
      if (is.state === 'waiting') timer = setTimeout(() => void ask(times + 1), times < QUICK_TIMES ? QUICK_MS : SLOW_MS);
      else setVerdict({ of: sha256, is });
    };
    void ask(0);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [clientId, sha256]);
  return verdict !== null && verdict.of === kept?.photo?.sha256 ? verdict.is : { state: 'waiting' };
}
