import type { Database, Queries } from './open-database';

const details = {
  photo: {
    include: {
      episode: {
        select: {
          clinicId: true,
          procedure: { select: { at: true } },
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
  /** So often a job may be begun. A photo that ends its worker each time must not do so for ever. */
  readonly mostAttempts: number;
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
 * @returns the photo to work on, with `givenUp` where it has been begun too often; null where there is nothing to do
 */
export async function claimJob(database: Database, claim: Claim): Promise<{ photo: ClaimedPhoto; givenUp: boolean } | null> {
  const { workerId, now, leaseMs, mostAttempts } = claim;
  return database.$transaction(async (queries) => {
    const job = await nextJob(queries, now);
    if (job === null) return null;
    const { photoId, state, attempts } = job;
    const givenUp = attempts >= mostAttempts;
    const { count } = await queries.job.updateMany({
      where: { photoId, state, attempts },
      data: givenUp
        ? { state: 'givenUp', finishedAt: now }
        : { state: 'running', attempts: attempts + 1, claimedBy: workerId, leaseEndsAt: new Date(now.getTime() + leaseMs) },
    });
    if (count === 0) return null;
    if (givenUp) await queries.episode.updateMany({ where: { id: job.photo.episodeId }, data: { assessAt: now } });
    return { photo: job.photo, givenUp };
  });
}
