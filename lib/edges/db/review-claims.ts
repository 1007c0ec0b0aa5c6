import type { Queries } from './open-database';

export interface ClaimRow {
  readonly staffId: string;
  readonly name: string;
  readonly claimedAt: Date;
}

/** Who has this case open now; null where nobody has, or where a claim has lapsed. */
export async function findReviewClaim(queries: Queries, episodeId: string, now: Date): Promise<ClaimRow | null> {
  const claim = await queries.reviewClaim.findUnique({ where: { episodeId, endsAt: { gt: now } }, include: { staff: { select: { name: true } } } });
  return claim && { staffId: claim.staffId, name: claim.staff.name, claimedAt: claim.claimedAt };
}

/** Takes the case or keeps it. Call within a transaction, after it was seen that nobody else has it. */
export async function keepReviewClaim(queries: Queries, episodeId: string, staffId: string, times: { now: Date; endsAt: Date }): Promise<void> {
  const { now, endsAt } = times;
  const mine = await queries.reviewClaim.updateMany({ where: { episodeId, staffId, endsAt: { gt: now } }, data: { endsAt } });
  if (mine.count > 0) return;
  const claim = { staffId, claimedAt: now, endsAt };
  await queries.reviewClaim.upsert({ where: { episodeId }, create: { episodeId, ...claim }, update: claim });
}

/** Lets go of it, if it is this person's. */
export async function endReviewClaim(queries: Queries, episodeId: string, staffId: string): Promise<void> {
  await queries.reviewClaim.deleteMany({ where: { episodeId, staffId } });
}
