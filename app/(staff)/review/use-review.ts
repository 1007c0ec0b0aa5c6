'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import type { ReviewList } from '@/lib/server/review-row';

const ASK_EVERY_MS = 4_000;
/** Waiting times grow and claims lapse without anything coming in. */
const RENEW_EVERY_MS = 60_000;
/** No list ever has this stamp. */
const ANY_OTHER = '-';

export interface Review {
  readonly list: ReviewList | null;
  /** The server has not answered for a while: what is on the screen may be old. */
  readonly offline: boolean;
  /** Read out: what has come since. */
  readonly news: string;
  readonly renew: () => Promise<void>;
}

/** The list, kept up to date: a short question every few seconds, the whole list where something has changed. */
export function useReview(): Review {
  const [list, setList] = useState<ReviewList | null>(null);
  const [offline, setOffline] = useState(false);
  const [news, setNews] = useState('');
  const known = useRef<ReviewList | null>(null);
  const renewedAtMs = useRef(0);

  const ask = useCallback(async (since: string | null) => {
    try {
      const response = await fetch(`/api/staff/review${since === null ? '' : `?since=${encodeURIComponent(since)}`}`, { cache: 'no-store' });
      if (response.status === 401) return window.location.assign('/sign-in');
      if (!response.ok) return setOffline(true);
      setOffline(false);
      const said = (await response.json()) as ReviewList | { readonly stamp: string };
      if (!('rows' in said)) return;
      const before = known.current;
      const added = before === null ? [] : said.rows.filter(({ episodeId }) => !before.rows.some((row) => row.episodeId === episodeId));
      if (added.length > 0) setNews(`New on the list: ${added.map(({ caseCode, levelWords }) => `${caseCode}, ${levelWords}`).join('; ')}`);
      known.current = said;
      renewedAtMs.current = Date.now();
      setList(said);
    } catch {
      setOffline(true);
    }
  }, []);

  useEffect(() => {
    void ask(null);
    const timer = setInterval(() => {
      if (document.hidden) return;
      const isOld = Date.now() - renewedAtMs.current > RENEW_EVERY_MS;
      void ask(isOld ? ANY_OTHER : (known.current?.stamp ?? ANY_OTHER));
    }, ASK_EVERY_MS);
    const seen = () => void (document.hidden ? undefined : ask(ANY_OTHER));
    document.addEventListener('visibilitychange', seen);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', seen);
    };
  }, [ask]);

  return { list, offline, news, renew: () => ask(ANY_OTHER) };
}
