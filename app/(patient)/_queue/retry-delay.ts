const FIRST_MS = 2_000;
const LONGEST_MS = 60_000;

/** How long to wait after so many vain attempts: twice as long each time, a minute at most. */
export const retryDelayMs = (attempts: number): number => Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.max(0, attempts - 1));
