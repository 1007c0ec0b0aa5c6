import { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';
import { type Prisma, PrismaClient } from './generated/client';
import { serialAdapter } from './serial-adapter';
import { PRAGMAS } from './verify-pragmas';

export type Database = PrismaClient;
/** What a query needs: the database, or a transaction that is open on it. */
export type Queries = Prisma.TransactionClient;

/** How long a writer waits for other processes before it says so. Ours. */
const GIVE_UP_AFTER_MS = 15_000;
/** Inside this process a transaction may have to wait for several of those. */
const TRANSACTION = { maxWait: 60_000, timeout: 20_000 };

/** Opens the database file, which must be there and migrated, with every setting verified. */
export async function openDatabase(file: string, giveUpAfterMs = GIVE_UP_AFTER_MS): Promise<Database> {
  const adapter = serialAdapter(new PrismaBetterSQLite3({ url: `file:${file}`, fileMustExist: true }), PRAGMAS, giveUpAfterMs);
  const database = new PrismaClient({ adapter, transactionOptions: TRANSACTION });
  await database.$connect();
  return database;
}
