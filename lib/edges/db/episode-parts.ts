import type { Prisma } from './generated/client';

/** What every reading of an episode takes with it, photos aside: those are read whole, or only as far as the rules ask. */
export const EPISODE_PARTS = {
  clinic: { include: { ruleBooks: { orderBy: { number: 'desc' }, take: 1 } } },
  procedure: true,
  plans: { orderBy: { number: 'desc' }, take: 1 },
  checkIns: { orderBy: { receivedAt: 'asc' } },
  resolutions: { orderBy: { at: 'asc' } },
  messages: { orderBy: { at: 'desc' } },
} as const satisfies Prisma.EpisodeInclude;
