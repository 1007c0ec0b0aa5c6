/**
 * How Node runs a process that measures photos. Outlines are some sixty megabytes of short-lived points for each photo: a young generation
 * of 64 MB is swept once for them and not five times. An eighth of the time for 33 MB (`npm run bench -- speed`).
 */
export const WORKER_FLAGS = ['--max-semi-space-size=64', '--import', 'tsx'] as const;
