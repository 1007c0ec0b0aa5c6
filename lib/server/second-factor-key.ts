import { hasSealedFactors } from '../edges/db/sealed-factors';
import { makeKeyFile, readKeyFile } from '../edges/files/key-file';
import type { Store } from './store';

/**
 * The key that seals second factors and signs the staff's cookies, made at its first use. Where something was sealed with a
 * key that is gone no other one is made: the operator puts the file back, or ends those second factors.
 */
export async function secondFactorKey({ database, settings }: Store): Promise<Uint8Array> {
  const key = await readKeyFile(settings.keyFile);
  if (key !== null) return key;
  if (await hasSealedFactors(database)) {
    throw new Error(`The key ${settings.keyFile} is missing, and second factors are sealed with it. Put it back from its own backup (FOLDWATCH_KEY_FILE), or end those second factors.`);
  }
  return makeKeyFile(settings.keyFile);
}
