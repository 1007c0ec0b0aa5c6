import { type Database, openDatabase } from '../edges/db/open-database';
import { readSettings, type Settings } from '../edges/env/settings';

export interface Store {
  readonly database: Database;
  readonly settings: Settings;
}

/** One per process: the web server loads its modules more than once, so the holder is the process itself. */
const holder = globalThis as { foldwatchStore?: Promise<Store> };

export function store(): Promise<Store> {
  holder.foldwatchStore ??= openStore().catch((error: unknown) => {
    holder.foldwatchStore = undefined;
    throw error;
  });
  return holder.foldwatchStore;
}

async function openStore(): Promise<Store> {
  const settings = readSettings();
  return { settings, database: await openDatabase(settings.databaseFile) };
}

/** For programs that end by themselves. */
export async function closeStore(): Promise<void> {
  const open = await holder.foldwatchStore;
  holder.foldwatchStore = undefined;
  await open?.database.$disconnect();
}
