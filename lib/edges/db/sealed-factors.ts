import { isFactorSealed } from '../session/factor-secret';
import type { Database, Queries } from './open-database';

/** As the first version kept them: base 32 has no colon and no sign of money. */
const PLAIN_FORM = /^[A-Z2-7]+$/;

/** Is a secret in this database that only its key opens? */
export async function hasSealedFactors(queries: Queries): Promise<boolean> {
  return (await queries.staffSecondFactor.findMany({ select: { secret: true } })).some(({ secret }) => !PLAIN_FORM.test(secret));
}

/** Seals secrets anew that an earlier version kept in its way, and leaves nothing of them in the file. @returns how many */
export async function sealFactors(database: Database, seal: (kept: string, staffId: string) => Promise<string>): Promise<number> {
  const rows = await database.staffSecondFactor.findMany({ select: { staffId: true, secret: true } });
  const earlier = rows.filter(({ secret }) => !isFactorSealed(secret));
  for (const { staffId, secret } of earlier) await database.staffSecondFactor.updateMany({ where: { staffId, secret }, data: { secret: await seal(secret, staffId) } });
  if (earlier.length > 0) {
    // What was written over still lies in free pages and in the side file.
    await database.$executeRawUnsafe('VACUUM');
    await database.$queryRawUnsafe('PRAGMA wal_checkpoint(TRUNCATE)');
  }
  return earlier.length;
}
