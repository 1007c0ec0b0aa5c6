/** A clinic at work is copied, the copy is opened elsewhere, and everything is there: the last row and the last photo. */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { backUp, restore } from '../../lib/commands/back-up';
import { openDatabase } from '../../lib/edges/db/open-database';
import { readSettings } from '../../lib/edges/env/settings';
import { photoPath } from '../../lib/edges/files/photo-path';
import { closeStore } from '../../lib/server/store';
import { checkInBody, newClientId, sendCheckIn, sendPhoto } from './phone';
import { openLink } from './routes-in-process';
import { samplePhoto, sha256Of, type TestClinic, testClinic, type TestPatient } from './test-clinic';

let clinic: TestClinic;
let patient: TestPatient;
const photo = samplePhoto('measured/light-shade.jpg');
const settingsAt = (folder: string) => readSettings({ FOLDWATCH_DATA: path.join(clinic.folder, folder) });
const backupFolder = () => path.join(clinic.folder, 'backup');

beforeEach(async () => {
  clinic = await testClinic();
  process.env.FOLDWATCH_DATA = clinic.folder;
  patient = await clinic.patient('one', 2);
  const send = await openLink(patient.secret);
  const clientId = newClientId();
  await sendPhoto(send, clientId, photo);
  await sendCheckIn(send, clientId, checkInBody({ hasPhoto: true }));
});
afterEach(async () => {
  await closeStore();
  await clinic.close();
});

it('has the last row and the last photo, with nothing left in a side file', async () => {
  // Nothing has been carried over into the main file yet: a plain copy of it would lose the newest rows.
  expect(existsSync(`${clinic.file}-wal`)).toBe(true);
  expect(await backUp(settingsAt('.'), backupFolder())).toEqual({ photos: 1, views: 0, lost: [] });
  expect(readdirSync(backupFolder()).sort()).toEqual(['foldwatch.sqlite', 'photos']);

  const elsewhere = settingsAt('elsewhere');
  expect(await restore(backupFolder(), elsewhere)).toEqual({ photos: 1, views: 0, lost: [] });
  const database = await openDatabase(elsewhere.databaseFile);
  expect(await database.checkIn.findMany()).toEqual(await clinic.database.checkIn.findMany());
  expect(await database.auditEvent.count()).toBe(await clinic.database.auditEvent.count());
  await database.$disconnect();
  expect(sha256Of(readFileSync(photoPath(elsewhere.photoFolder, { episodeId: patient.episodeId, sha256: sha256Of(photo) })))).toBe(sha256Of(photo));
});

it('says which photo is missing or is not what it was, and copies the rest', async () => {
  const stored = photoPath(settingsAt('.').photoFolder, { episodeId: patient.episodeId, sha256: sha256Of(photo) });
  writeFileSync(stored, 'something else');
  expect((await backUp(settingsAt('.'), backupFolder())).lost).toEqual([stored]);
  rmSync(backupFolder(), { recursive: true });
  rmSync(stored);
  expect((await backUp(settingsAt('.'), backupFolder())).lost).toEqual([stored]);
});

it('writes over nothing, neither an older copy nor a clinic', async () => {
  await backUp(settingsAt('.'), backupFolder());
  await expect(backUp(settingsAt('.'), backupFolder())).rejects.toThrow(/not empty/);
  await expect(restore(backupFolder(), settingsAt('.'))).rejects.toThrow(/not empty/);
});

it('refuses a copy that is damaged', async () => {
  await backUp(settingsAt('.'), backupFolder());
  const copy = path.join(backupFolder(), 'foldwatch.sqlite');
  const bytes = readFileSync(copy);
  bytes.fill(0xff, 4096, 12_288);
  writeFileSync(copy, bytes);
  await expect(restore(backupFolder(), settingsAt('elsewhere'))).rejects.toThrow();
  expect(existsSync(settingsAt('elsewhere').databaseFile)).toBe(false);
});
