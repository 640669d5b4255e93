import type { Action, KeptAction } from './queue.js';
import type { OutboxStore } from './work-off.js';

const database = 'cartwright-outbox';
const table = 'action';

/** Actions in IndexedDB: they outlive the page, the browser, a sign-out and a new version of the screens. */
export function deviceStore(): OutboxStore {
  let opened: Promise<IDBDatabase> | undefined;
  const open = () => (opened ??= openDatabase());
  const run = async <T>(mode: IDBTransactionMode, ask: (rows: IDBObjectStore) => IDBRequest<T>): Promise<T> => {
    // Strict: "kept" means on disk, also when the battery dies in the next second.
    const transaction = (await open()).transaction(table, mode, { durability: 'strict' });
    const request = ask(transaction.objectStore(table));
    await new Promise<void>((done, fail) => {
      transaction.oncomplete = () => done();
      transaction.onabort = () => fail(transaction.error ?? new Error('the device kept nothing'));
    });
    return request.result;
  };
  return {
    add: async (action: Action) => {
      const kept = { ...action, since: action.doneAt, state: 'waiting' as const, reason: null, faults: 0 };
      const place = Number(await run('readwrite', (rows) => rows.add(kept)));
      return { ...kept, place };
    },
    all: () => run<KeptAction[]>('readonly', (rows) => rows.getAll() as IDBRequest<KeptAction[]>),
    put: async (action) => void (await run('readwrite', (rows) => rows.put(action))),
    remove: async (place) => void (await run('readwrite', (rows) => rows.delete(place))),
  };
}

function openDatabase(): Promise<IDBDatabase> {
  return new Promise((done, fail) => {
    const request = indexedDB.open(database, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(table, { keyPath: 'place', autoIncrement: true });
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error ?? new Error('the device keeps nothing'));
  });
}
