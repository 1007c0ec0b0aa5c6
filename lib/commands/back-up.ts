import { mkdir, readdir, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { namedFiles, snapshotDatabase, verifyDatabase } from '../edges/db/snapshot-database';
import type { Settings } from '../edges/env/settings';
import { copyPhotos } from '../edges/files/copy-photos';

export interface BackupReport {
  readonly photos: number;
  readonly views: number;
  /** Files that the database names and that are not there, or are not what they were. */
  readonly lost: readonly string[];
}

const DATABASE = 'foldwatch.sqlite';
const PHOTOS = 'photos';

async function isEmpty(folder: string): Promise<boolean> {
  return (await readdir(folder).catch(() => [])).length === 0;
}

/**
 * Copies a clinic that is at work: first the database as it is at one moment, then every file that it names. Files come
 * before their rows, so all of them are there. The database gets its name last: without it a copy is not finished.
 */
export async function backUp({ databaseFile, photoFolder }: Settings, folder: string): Promise<BackupReport> {
  if (!(await isEmpty(folder))) throw new Error(`${folder} is not empty: a backup gets a folder of its own.`);
  await mkdir(folder, { recursive: true });
  const unfinished = path.join(folder, `${DATABASE}.part`);
  await snapshotDatabase(databaseFile, unfinished);
  return finish(unfinished, photoFolder, path.join(folder, PHOTOS), path.join(folder, DATABASE));
}

/** Puts a backup where there is no clinic yet. */
export async function restore(folder: string, { databaseFile, photoFolder }: Settings): Promise<BackupReport> {
  if (!(await isEmpty(path.dirname(databaseFile)))) throw new Error(`${path.dirname(databaseFile)} is not empty: restore into a new folder, and look before you change over.`);
  await mkdir(path.dirname(databaseFile), { recursive: true });
  const unfinished = `${databaseFile}.part`;
  await snapshotDatabase(path.join(folder, DATABASE), unfinished);
  return finish(unfinished, path.join(folder, PHOTOS), photoFolder, databaseFile);
}

async function finish(unfinished: string, fromPhotos: string, toPhotos: string, databaseFile: string): Promise<BackupReport> {
  await verifyDatabase(unfinished);
  const named = await namedFiles(unfinished);
  const lost = await copyPhotos(fromPhotos, toPhotos, named);
  // Side files of another database beside this one would be taken for its own.
  for (const side of ['-wal', '-shm']) await rm(databaseFile + side, { force: true });
  await rename(unfinished, databaseFile);
  return { photos: named.whole.length, views: named.views.length, lost };
}
