/** `npm run backup -- FOLDER` copies the clinic in FOLDWATCH_DATA there; `npm run backup -- --restore FOLDER` brings it back. */
import { readSettings } from '../edges/env/settings';
import { backUp, restore } from './back-up';

const words = process.argv.slice(2);
const folder = words.find((word) => !word.startsWith('--'));
if (folder === undefined) {
  console.error('Name a folder: npm run backup -- FOLDER, or npm run backup -- --restore FOLDER.');
  process.exit(2);
}
try {
  const settings = readSettings();
  const { photos, views, lost } = words.includes('--restore') ? await restore(folder, settings) : await backUp(settings, folder);
  console.log(`The database, ${photos} photos and ${views} pictures made of them were copied, each checked by its hash.`);
  console.log('They show patients: keep the copy on an encrypted disk.');
  console.log(`The key of the second factors is not in the copy: keep ${settings.keyFile} in another place, and put it back after the rest.`);
  for (const file of lost) console.error(`Missing or damaged: ${file}`);
  if (lost.length > 0) process.exitCode = 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
}
