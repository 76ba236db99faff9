import { infoOf, type Kept, type Store, type Written } from './store.ts';

const DATABASE = 'platenwright';
const TABLE = 'designs';

const done = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error(TABLE));
  });

const open = (): Promise<IDBDatabase> => {
  const request = indexedDB.open(DATABASE, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(TABLE, { keyPath: 'id' });
  return done(request);
};

/**
 * Writes in one transaction: the browser lets no other tab between the look at the old revision
 * and the new entry.
 */
const exchange = (db: IDBDatabase, entry: Kept, after: number): Promise<Written> =>
  new Promise((resolve) => {
    const transaction = db.transaction(TABLE, 'readwrite');
    const table = transaction.objectStore(TABLE);
    let outcome: Written = 'refused';
    const look: IDBRequest<Kept | undefined> = table.get(entry.id);
    look.onsuccess = () => {
      outcome = (look.result?.revision ?? 0) === after ? 'kept' : 'overtaken';
      if (outcome === 'kept') table.put(entry);
    };
    transaction.oncomplete = () => resolve(outcome);
    transaction.onabort = () => resolve('refused');
    transaction.onerror = () => resolve('refused');
  });

/** Designs in the browser's own database; rejects where the browser gives none. */
export const indexedStore = async (): Promise<Store> => {
  const db = await open();
  const table = (mode: IDBTransactionMode) => db.transaction(TABLE, mode).objectStore(TABLE);
  return {
    list: async () => (await done<Kept[]>(table('readonly').getAll())).map(infoOf),
    read: (id) => done<Kept | undefined>(table('readonly').get(id)),
    write: (entry, after) => exchange(db, entry, after),
    remove: async (id) => {
      await done(table('readwrite').delete(id));
    },
  };
};
