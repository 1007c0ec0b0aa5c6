/** `npm run migrate`: brings the database in FOLDWATCH_DATA to this program's schema; makes it where there is none. */
import path from 'node:path';
import { migrateDatabase } from '../edges/db/migrate-database';
import { readSettings } from '../edges/env/settings';

const applied = await migrateDatabase(readSettings().databaseFile, path.resolve(import.meta.dirname, '..', '..', 'prisma', 'migrations'));
console.log(applied.length > 0 ? `Applied: ${applied.join(', ')}.` : 'The database is up to date.');
