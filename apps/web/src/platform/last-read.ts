import { createAsyncStoragePersister } from '@tanstack/query-async-storage-persister';
import type { Query } from '@tanstack/react-query';
import { type PersistQueryClientOptions, removeOldestQuery } from '@tanstack/react-query-persist-client';
import { createStore, del, get, set } from 'idb-keyval';

/** Of one person, characters: the pages of a few shows. Above it the oldest reading is given up. */
const mostCharacters = 20_000_000;

const daysKept = 7;

const personKey = 'cartwright-person';
const store = createStore('cartwright-last-read', 'read');

/** What was read last belongs to whoever read it. */
const keyOf = (key: string): string => `${key} ${localStorage.getItem(personKey) ?? 'nobody'}`;

/** What was read last stays readable in a basement dock: kept on this device for each person, for as long as answers keep their shapes, given up at sign-out. */
export const lastRead: Omit<PersistQueryClientOptions, 'queryClient'> = {
  persister: createAsyncStoragePersister({
    key: 'queries',
    throttleTime: 1_000,
    retry: removeOldestQuery,
    storage: {
      getItem: async (key) => (await get<string>(keyOf(key), store)) ?? null,
      setItem: (key, value) =>
        value.length > mostCharacters ? Promise.reject(new Error('more than is kept')) : set(keyOf(key), value, store),
      removeItem: (key) => del(keyOf(key), store),
    },
  }),
  maxAge: daysKept * 86_400_000,
  // Another version may expect other shapes.
  buster: SHAPES,
  // What could not be read again is kept as it was read last.
  dehydrateOptions: { shouldDehydrateQuery: (query) => query.state.data !== undefined && !isSignedOut(query) },
};

/** "Nobody is signed in" is never remembered: the next page asks again. */
const isSignedOut = (query: Pick<Query, 'queryKey' | 'state'>): boolean =>
  query.queryKey[0] === 'me' && (query.state.data as { me: unknown } | undefined)?.me === null;

export const rememberPerson = (id: string): void => localStorage.setItem(personKey, id);

export async function forgetLastRead(): Promise<void> {
  await lastRead.persister.removeClient();
  localStorage.removeItem(personKey);
}
