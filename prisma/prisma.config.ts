/**
 * For Prisma's own command line: `npx prisma migrate dev --config prisma/prisma.config.ts`. The JavaScript engine and the
 * adapter need no downloaded program. The running app migrates by itself (lib/edges/db/migrate-database.ts).
 */
import { PrismaBetterSQLite3 } from '@prisma/adapter-better-sqlite3';
import { defineConfig } from 'prisma/config';

export default defineConfig({
  schema: 'schema.prisma',
  migrations: { path: 'migrations' },
  experimental: { adapter: true },
  engine: 'js',
  adapter: async () => new PrismaBetterSQLite3({ url: process.env.FOLDWATCH_DATA ? `${process.env.FOLDWATCH_DATA}/foldwatch.sqlite` : ':memory:' }),
});
