/** The adapter's own types, so that its inner packages need not be named. */
import type { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';

export type Connection = Awaited<ReturnType<PrismaBetterSQLite3['connect']>>;
export type OpenTransaction = Awaited<ReturnType<Connection['startTransaction']>>;
export type Statement = Parameters<Connection['executeRaw']>[0];

export interface ConnectionFactory {
  readonly provider: PrismaBetterSQLite3['provider'];
  readonly adapterName: PrismaBetterSQLite3['adapterName'];
  connect(): Promise<Connection>;
}

/** A statement with text parameters: `statement('SELECT ?', 'a')`. */
export const statement = (sql: string, ...args: readonly string[]): Statement => ({
  sql,
  args: [...args],
  argTypes: args.map(() => ({ scalarType: 'string', arity: 'scalar' })),
});
