import { createHash } from 'node:crypto';
import type { Queries } from './open-database';

/** So many tries cost nothing: a person mistypes. */
const FREE_TRIES = 3;
/** Each further one doubles the wait, up to here: guessing is hopeless, and nobody is kept out by it for longer than this. */
const LONGEST_WAIT_S = 60;
/** After a quiet hour the count begins anew. */
const FORGET_AFTER_MS = 3_600_000;

/** Mail addresses of whoever tries are nobody's business. */
const hashEmail = (email: string): string => createHash('sha256').update(email).digest('hex');

const waitSeconds = (failures: number): number => (failures < FREE_TRIES ? 0 : Math.min(LONGEST_WAIT_S, 2 ** (failures - FREE_TRIES)));

/**
 * Counts a try before the password is looked at, so that many at once gain nothing. Call within a transaction.
 * @returns the seconds still to wait, where this try came too soon; 0 where it may be made
 */
export async function takeSignInDelay(queries: Queries, email: string, now: Date): Promise<number> {
  const emailHash = hashEmail(email);
  await queries.signInDelay.deleteMany({ where: { triedAt: { lt: new Date(now.getTime() - FORGET_AFTER_MS) } } });
  const before = await queries.signInDelay.findUnique({ where: { emailHash } });
  if (before && before.waitUntil > now) return Math.ceil((before.waitUntil.getTime() - now.getTime()) / 1000);
  const failures = (before?.failures ?? 0) + 1;
  const counted = { failures, triedAt: now, waitUntil: new Date(now.getTime() + waitSeconds(failures) * 1000) };
  await queries.signInDelay.upsert({ where: { emailHash }, create: { emailHash, ...counted }, update: counted });
  return 0;
}

/** The password was right. */
export async function clearSignInDelay(queries: Queries, email: string): Promise<void> {
  await queries.signInDelay.deleteMany({ where: { emailHash: hashEmail(email) } });
}
