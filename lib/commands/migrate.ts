/** `npm run migrate`: brings the database in FOLDWATCH_DATA to this program's schema; makes it where there is none. */
import path from 'node:path';
import { fillOpenCases } from '../edges/db/fill-open-cases';
import { migrateDatabase } from '../edges/db/migrate-database';
import { openDatabase } from '../edges/db/open-database';
import { sealFactors } from '../edges/db/sealed-factors';
import { readSettings } from '../edges/env/settings';
import { openEarlierSeal } from '../edges/session/earlier-seal';
import { sealFactorSecret } from '../edges/session/factor-secret';
import { authOfStore } from '../server/auth-of-store';
import { secondFactorKey } from '../server/second-factor-key';

const settings = readSettings();
const { databaseFile } = settings;
const applied = await migrateDatabase(databaseFile, path.resolve(import.meta.dirname, '..', '..', 'prisma', 'migrations'));
const database = await openDatabase(databaseFile);
if (applied.some((name) => name.endsWith('_open_case'))) await fillOpenCases(database, new Date());
const open = { database, settings };
const [key, auth] = [await secondFactorKey(open), await authOfStore(open)];
const sealed = await sealFactors(database, (kept, staffId) => sealFactorSecret(auth, openEarlierSeal(kept, key, staffId)));
if (sealed > 0) console.log(`${sealed} second factors were sealed with the key ${settings.keyFile}.`);
await database.$disconnect();
console.log(applied.length > 0 ? `Applied: ${applied.join(', ')}.` : 'The database is up to date.');
