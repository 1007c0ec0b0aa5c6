import { newId } from './new-id';
import type { Queries } from './open-database';

export interface SecondFactorRow {
  /** With a first code; until then it counts for nothing. */
  readonly verified: boolean;
  readonly recoveryHashes: readonly string[];
}

/** The second factor of a person; null where there is none, also none that waits for its first code. */
export async function findSecondFactor(queries: Queries, staffId: string): Promise<SecondFactorRow | null> {
  const row = await queries.staffSecondFactor.findUnique({ where: { staffId } });
  return row && { verified: row.verified, recoveryHashes: JSON.parse(row.recoveryHashes) as string[] };
}

/** Begins one anew; what was begun before counts no longer. */
export async function beginSecondFactor(queries: Queries, staffId: string, sealedSecret: string): Promise<void> {
  const fresh = { secret: sealedSecret, recoveryHashes: '[]', verified: false, failures: 0, lockedUntil: null };
  await queries.staffSecondFactor.upsert({ where: { staffId }, create: { id: newId(), staffId, ...fresh }, update: fresh });
}

export async function keepRecoveryHashes(queries: Queries, staffId: string, hashes: readonly string[]): Promise<void> {
  await queries.staffSecondFactor.update({ where: { staffId }, data: { recoveryHashes: JSON.stringify(hashes) } });
}

export async function endSecondFactor(queries: Queries, staffId: string): Promise<void> {
  await queries.staffSecondFactor.deleteMany({ where: { staffId } });
  await queries.staff.update({ where: { id: staffId }, data: { hasFactor: false } });
}
