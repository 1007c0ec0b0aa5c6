import type { Queries } from './open-database';

export interface SecondFactorRow {
  readonly secret: string;
  readonly lastStep: number;
  readonly recoveryHashes: readonly string[];
  readonly confirmedAt: Date | null;
}

/** The second factor of a person; null where there is none, also none that waits for its first code. */
export async function findSecondFactor(queries: Queries, staffId: string): Promise<SecondFactorRow | null> {
  const row = await queries.staffSecondFactor.findUnique({ where: { staffId } });
  return row && { ...row, recoveryHashes: JSON.parse(row.recoveryHashes) as string[] };
}

/** Begins one anew; what was begun before counts no longer. */
export async function beginSecondFactor(queries: Queries, staffId: string, secret: string, madeAt: Date): Promise<void> {
  const fresh = { secret, lastStep: 0, recoveryHashes: '[]', madeAt, confirmedAt: null };
  await queries.staffSecondFactor.upsert({ where: { staffId }, create: { staffId, ...fresh }, update: fresh });
}

export async function confirmSecondFactor(queries: Queries, staffId: string, words: { lastStep: number; recoveryHashes: readonly string[]; confirmedAt: Date }): Promise<void> {
  await queries.staffSecondFactor.update({ where: { staffId }, data: { ...words, recoveryHashes: JSON.stringify(words.recoveryHashes) } });
}

/** Notes that a code or a recovery code has been used. */
export async function useSecondFactor(queries: Queries, staffId: string, words: { lastStep: number; recoveryHashes: readonly string[] }): Promise<void> {
  await queries.staffSecondFactor.update({ where: { staffId }, data: { lastStep: words.lastStep, recoveryHashes: JSON.stringify(words.recoveryHashes) } });
}

export async function endSecondFactor(queries: Queries, staffId: string): Promise<void> {
  await queries.staffSecondFactor.deleteMany({ where: { staffId } });
}
