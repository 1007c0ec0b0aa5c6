/** `npm run seed`: puts the demo clinic into the database in FOLDWATCH_DATA, and prints the patients' links. */
import { openDatabase } from '../edges/db/open-database';
import { readSettings } from '../edges/env/settings';
import { DEMO_PASSWORD, DEMO_STAFF } from './demo-cases';
import { seedDemo } from './seed-demo';

const settings = readSettings();
const database = await openDatabase(settings.databaseFile);
const links = await seedDemo(database, settings.photoFolder, new Date());
await database.$disconnect();
const origin = settings.origin ?? `http://localhost:${process.env.PORT ?? '3000'}`;
for (const { caseCode, secret } of links) console.log(`${caseCode}  ${origin}/p/${secret}`);
for (const { role, email } of DEMO_STAFF) console.log(`${role}  ${origin}/sign-in  ${email}  ${DEMO_PASSWORD}`);
