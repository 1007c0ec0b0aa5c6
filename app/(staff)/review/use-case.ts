'use client';

import { useCallback, useEffect, useState } from 'react';
import type { ReviewCase } from '@/lib/server/review-case';

/** The claim lapses on the server some minutes after the last of these. */
const KEEP_EVERY_MS = 60_000;

/** Somebody else has the case. */
export interface Holder {
  readonly by: string;
  readonly since: string;
}

export interface OpenCase {
  readonly shown: ReviewCase | null;
  readonly holder: Holder | null;
  readonly problem: string;
  readonly reload: () => Promise<void>;
  readonly takeOver: () => Promise<void>;
}

async function claim(episodeId: string, step: 'keep' | 'takeOver' | 'letGo'): Promise<Holder | null> {
  // The last word of a page that is being left is sent all the same.
  const response = await fetch(`/api/staff/review/${episodeId}/claim`, { method: 'POST', body: JSON.stringify({ step }), keepalive: step === 'letGo' });
  return response.status === 409 ? ((await response.json()) as Holder) : null;
}

/** One case, claimed for as long as it is open here, and let go when it is not. */
export function useCase(episodeId: string): OpenCase {
  const [shown, setShown] = useState<ReviewCase | null>(null);
  const [holder, setHolder] = useState<Holder | null>(null);
  const [problem, setProblem] = useState('');

  const reload = useCallback(async () => {
    try {
      const response = await fetch(`/api/staff/review/${episodeId}`, { cache: 'no-store' });
      if (response.status === 401) return window.location.assign('/sign-in');
      if (!response.ok) return setProblem('This case cannot be shown now. It stays on the list.');
      setProblem('');
      setShown((await response.json()) as ReviewCase);
    } catch {
      setProblem('There is no connection to the server. The case stays on the list.');
    }
  }, [episodeId]);

  useEffect(() => {
    const keep = () => void claim(episodeId, 'keep').then(setHolder, () => undefined);
    keep();
    void reload();
    const timer = setInterval(keep, KEEP_EVERY_MS);
    return () => {
      clearInterval(timer);
      void claim(episodeId, 'letGo').catch(() => undefined);
    };
  }, [episodeId, reload]);

  const takeOver = async () => setHolder(await claim(episodeId, 'takeOver').catch(() => holder));
  return { shown, holder, problem, reload, takeOver };
}
