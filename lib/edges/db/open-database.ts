import { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';
import { type Prisma, PrismaClient } from './generated/client';
import { serialAdapter } from './serial-adapter';
import { PRAGMAS } from './verify-pragmas';

export type Database = PrismaClient;
/** What a query needs: the database, or a transaction that is open on it. */
export type Queries = Prisma.TransactionClient;

/** A transaction may wait for other writers as long as `retryBusy` does. */
const TRANSACTION = { maxWait: 20_000, timeout: 20_000 };

/** Opens the database file, which must be there and migrated, with every setting verified. */
export async function openDatabase(file: string): Promise<Database> {
  const adapter = serialAdapter(new PrismaBetterSQLite3({ url: `file:${file}`, fileMustExist: true }), PRAGMAS);
  const database = new PrismaClient({ adapter, transactionOptions: TRANSACTION });
  await database.$connect();
  return database;
}
