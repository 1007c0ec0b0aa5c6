import { isSealed } from '../session/seal-secret';
import type { Database, Queries } from './open-database';

/** Is a secret in this database that only its key opens? */
export async function hasSealedFactors(queries: Queries): Promise<boolean> {
  return (await queries.staffSecondFactor.findMany({ select: { secret: true } })).some(({ secret }) => isSealed(secret));
}

/** Seals secrets that an earlier version kept as they are, and leaves nothing of them in the file. @returns how many */
export async function sealFactors(database: Database, seal: (secret: string, staffId: string) => string): Promise<number> {
  const rows = await database.staffSecondFactor.findMany({ select: { staffId: true, secret: true } });
  const plain = rows.filter(({ secret }) => !isSealed(secret));
  for (const { staffId, secret } of plain) await database.staffSecondFactor.updateMany({ where: { staffId, secret }, data: { secret: seal(secret, staffId) } });
  if (plain.length > 0) {
    // What was written over still lies in free pages and in the side file.
    await database.$executeRawUnsafe('VACUUM');
    await database.$queryRawUnsafe('PRAGMA wal_checkpoint(TRUNCATE)');
  }
  return plain.length;
}
