/** What lies on the phone. Photos as buffers, never as Blobs: some browsers cannot read a stored Blob again. */
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { KeptCheckIn, KeptPhoto } from './kept-check-in';

interface Tables extends DBSchema {
  checkIns: { key: string; value: KeptCheckIn };
  pieces: { key: [clientId: string, sha256: string, index: number]; value: ArrayBuffer };
  kept: { key: string; value: unknown };
}

let opened: Promise<IDBPDatabase<Tables>> | null = null;

function open(): Promise<IDBPDatabase<Tables>> {
  opened ??= openDB<Tables>('patient', 1, {
    upgrade(db) {
      db.createObjectStore('checkIns', { keyPath: 'clientId' });
      db.createObjectStore('pieces');
      db.createObjectStore('kept');
    },
    // The browser closed it under us (it was short of memory): open it again at the next need.
    terminated: () => (opened = null),
  });
  opened.catch(() => (opened = null));
  return opened;
}

const changes = new EventTarget();
const piecesOf = (clientId: string) => IDBKeyRange.bound([clientId, '', 0], [clientId, '\uffff', Infinity]);

export const phoneStore = {
  /** Calls back after every change to a check-in; answers how to stop that. */
  onChange(call: () => void): () => void {
    changes.addEventListener('change', call);
    return () => changes.removeEventListener('change', call);
  },

  /** Has everybody read again. */
  say(): void {
    changes.dispatchEvent(new Event('change'));
  },

  async checkIns(): Promise<KeptCheckIn[]> {
    return (await open()).getAll('checkIns');
  },

  async checkIn(clientId: string): Promise<KeptCheckIn | undefined> {
    return (await open()).get('checkIns', clientId);
  },

  async add(checkIn: KeptCheckIn): Promise<void> {
    await (await open()).put('checkIns', checkIn);
    changes.dispatchEvent(new Event('change'));
  },

  /** Reads and writes in one transaction, so that the page and the sender cannot overwrite each other. */
  async update(clientId: string, change: (kept: KeptCheckIn) => KeptCheckIn): Promise<void> {
    const transaction = (await open()).transaction('checkIns', 'readwrite');
    const kept = await transaction.store.get(clientId);
    if (kept !== undefined) await transaction.store.put(change(kept));
    await transaction.done;
    changes.dispatchEvent(new Event('change'));
  },

  /** The photo and the check-in that has it appear together or not at all; an earlier photo of it goes. */
  async putPhoto(clientId: string, photo: KeptPhoto, pieces: readonly ArrayBuffer[]): Promise<void> {
    const transaction = (await open()).transaction(['checkIns', 'pieces'], 'readwrite');
    const checkIns = transaction.objectStore('checkIns');
    const kept = await checkIns.get(clientId);
    if (kept === undefined) throw new Error(`putPhoto: there is no check-in ${clientId}`);
    await transaction.objectStore('pieces').delete(piecesOf(clientId));
    await Promise.all(pieces.map((piece, index) => transaction.objectStore('pieces').put(piece, [clientId, photo.sha256, index])));
    await checkIns.put({ ...kept, photo });
    await transaction.done;
    changes.dispatchEvent(new Event('change'));
  },

  async piece(clientId: string, sha256: string, index: number): Promise<ArrayBuffer | undefined> {
    return (await open()).get('pieces', [clientId, sha256, index]);
  },

  /** Only after the receipt: the phone forgets the bytes. */
  async forgetPieces(clientId: string): Promise<void> {
    await (await open()).delete('pieces', piecesOf(clientId));
  },

  async remove(clientId: string): Promise<void> {
    const transaction = (await open()).transaction(['checkIns', 'pieces'], 'readwrite');
    await transaction.objectStore('checkIns').delete(clientId);
    await transaction.objectStore('pieces').delete(piecesOf(clientId));
    await transaction.done;
    changes.dispatchEvent(new Event('change'));
  },

  async read(key: string): Promise<unknown> {
    return (await open()).get('kept', key);
  },

  async write(key: string, value: unknown): Promise<void> {
    await (await open()).put('kept', value, key);
  },
};
