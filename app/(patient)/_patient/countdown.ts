/** Whole seconds left of so many minutes that began at a moment; never below 0, never more than all of them. */
export function secondsLeft(startedAtMs: number, minutes: number, nowMs: number): number {
  const left = Math.ceil((startedAtMs + minutes * 60_000 - nowMs) / 1000);
  return Math.min(minutes * 60, Math.max(0, left));
}

/** Seconds as a kitchen clock shows them: `clockFace(65)` is `1:05`. */
export const clockFace = (seconds: number): string => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
