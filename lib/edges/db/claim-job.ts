import type { Database, Queries } from './open-database';

const details = {
  photo: {
    include: {
      episode: {
        select: {
          clinicId: true,
          procedure: { select: { at: true, foot: true, treatedSides: true } },
          cards: { where: { retiredAt: null }, orderBy: { madeAt: 'desc' }, select: { serial: true, barReadsMm: true } },
        },
      },
    },
  },
} as const;

export interface Claim {
  readonly workerId: string;
  readonly now: Date;
  /** Somebody else may take the job when the worker has not finished by then: it has died. */
  readonly leaseMs: number;
}

/** The newest job that nobody works on: somebody may be waiting for it with the phone in the hand. */
const nextJob = (queries: Queries, now: Date) =>
  queries.job.findFirst({
    where: { OR: [{ state: 'waiting' }, { state: 'running', leaseEndsAt: { lt: now } }] },
    orderBy: { madeAt: 'desc' },
    include: details,
  });

export type ClaimedPhoto = NonNullable<Awaited<ReturnType<typeof nextJob>>>['photo'];

/**
 * Takes one job, so that no other worker has it too: the update counts only where the job still is as it was seen.
 * @returns the photo to work on and how often that has been begun, this time included; null where there is nothing to do
 */
export async function claimJob(database: Database, { workerId, now, leaseMs }: Claim): Promise<{ photo: ClaimedPhoto; attempts: number } | null> {
  return database.$transaction(async (queries) => {
    const job = await nextJob(queries, now);
    if (job === null) return null;
    const { photoId, state, photo } = job;
    const attempts = job.attempts + 1;
    const { count } = await queries.job.updateMany({
      where: { photoId, state, attempts: job.attempts },
      data: { state: 'running', attempts, claimedBy: workerId, leaseEndsAt: new Date(now.getTime() + leaseMs) },
    });
    return count === 0 ? null : { photo, attempts };
  });
}
