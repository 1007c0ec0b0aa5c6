/** `npm run migrate`: brings the database in FOLDWATCH_DATA to this program's schema; makes it where there is none. */
import path from 'node:path';
import { fillOpenCases } from '../edges/db/fill-open-cases';
import { migrateDatabase } from '../edges/db/migrate-database';
import { openDatabase } from '../edges/db/open-database';
import { readSettings } from '../edges/env/settings';

const { databaseFile } = readSettings();
const applied = await migrateDatabase(databaseFile, path.resolve(import.meta.dirname, '..', '..', 'prisma', 'migrations'));
if (applied.some((name) => name.endsWith('_open_case'))) {
  const database = await openDatabase(databaseFile);
  await fillOpenCases(database, new Date());
  await database.$disconnect();
}
console.log(applied.length > 0 ? `Applied: ${applied.join(', ')}.` : 'The database is up to date.');
