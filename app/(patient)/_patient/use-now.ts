import { useEffect, useState } from 'react';

/** The moment by the clinic's clock, milliseconds; it moves on by itself. */
export function useNow(everyMs: number, skewMs = 0): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), everyMs);
    return () => clearInterval(timer);
  }, [everyMs]);
  return now + skewMs;
}
