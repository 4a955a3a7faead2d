// shelf.ts: what is kept on the device: things by key, on several shelves. IndexedDB in the browser, a map in tests.

export interface Shelf {
  put(key: string, value: unknown): Promise<void>;
  get(key: string): Promise<unknown>;
  /** Key order. */
  all(): Promise<unknown[]>;
  remove(key: string): Promise<void>;
}
export const shelfNames = ['outbox', 'blobs', 'views'] as const;
export type Shelves = Readonly<Record<(typeof shelfNames)[number], Shelf>>;

/** Kept only while the page lives: where the browser has no IndexedDB (private windows), and for tests. */
export function memoryShelf(): Shelf {
  const held = new Map<string, unknown>();
  return {
    put: async (key, value) => void held.set(key, structuredClone(value)),
    get: async (key) => held.get(key),
    all: async () => [...held.keys()].sort().map((key) => held.get(key)),
    remove: async (key) => void held.delete(key),
  };
}

const asked = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

function idbShelf(database: IDBDatabase, name: string): Shelf {
  // A write is done when its transaction is, and 'strict' asks that it be on the disk by then.
  const write = (what: (store: IDBObjectStore) => void): Promise<void> =>
    new Promise((resolve, reject) => {
      const transaction = database.transaction(name, 'readwrite', { durability: 'strict' });
      transaction.oncomplete = () => resolve();
      transaction.onabort = transaction.onerror = () => reject(transaction.error);
      what(transaction.objectStore(name));
    });
  const read = () => database.transaction(name, 'readonly').objectStore(name);
  return {
    put: (key, value) => write((store) => store.put(value, key)),
    get: (key) => asked(read().get(key) as IDBRequest<unknown>),
    all: () => asked(read().getAll() as IDBRequest<unknown[]>),
    remove: (key) => write((store) => store.delete(key)),
  };
}

/** `lasting`: what is kept outlives the page. */
export async function openShelves(): Promise<{ shelves: Shelves; lasting: boolean }> {
  try {
    const request = indexedDB.open('flatwise', 1);
    request.onupgradeneeded = () => shelfNames.forEach((name) => request.result.createObjectStore(name));
    const database = await asked(request);
    return {
      lasting: true,
      shelves: {
        outbox: idbShelf(database, 'outbox'), blobs: idbShelf(database, 'blobs'), views: idbShelf(database, 'views'),
      },
    };
  } catch {
    return { lasting: false, shelves: { outbox: memoryShelf(), blobs: memoryShelf(), views: memoryShelf() } };
  }
}
