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
      const place = Number(await run('readwrite', (rows) => rows.add(kept)).catch(notKept));
      return { ...kept, place };
    },
    next: async (personId) => {
      const rows = (await open()).transaction(table, 'readonly').objectStore(table);
      return new Promise((done, fail) => {
        const asked = rows.openCursor();
        asked.onerror = () => fail(asked.error ?? new Error('the device cannot read what it kept'));
        asked.onsuccess = () => {
          const each = asked.result?.value as KeptAction | undefined;
          if (each === undefined || (each.personId === personId && each.state === 'waiting')) done(each);
          else asked.result?.continue();
        };
      });
    },
    all: () => run<KeptAction[]>('readonly', (rows) => rows.getAll() as IDBRequest<KeptAction[]>),
    put: async (action) => void (await run('readwrite', (rows) => rows.put(action))),
    remove: async (place) => void (await run('readwrite', (rows) => rows.delete(place))),
  };
}

/** Said to whoever pressed: nothing of it is left, so that it is not believed to be noted. */
function notKept(fault: unknown): never {
  const isFull = fault instanceof DOMException && fault.name === 'QuotaExceededError';
  throw new Error(
    isFull
      ? 'Not noted: the storage of this device is full. Make room on it (pictures, films), or write it down on paper, and do it again.'
      : 'Not noted: this browser keeps nothing on the device, as in a private window. Use a usual window, or write it down on paper.',
    { cause: fault },
  );
}

function openDatabase(): Promise<IDBDatabase> {
  return new Promise((done, fail) => {
    const request = indexedDB.open(database, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(table, { keyPath: 'place', autoIncrement: true });
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error ?? new Error('the device keeps nothing'));
  });
}
