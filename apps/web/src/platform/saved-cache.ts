import { type DehydratedState, type Query, type QueryClient, dehydrate, hydrate } from '@tanstack/react-query';

const key = 'cartwright-last-read';

/** What was read last stays readable in a basement dock: kept in this browser, given up at sign-out. */
export function keepLastRead(client: QueryClient): void {
  const saved = localStorage.getItem(key);
  if (saved) {
    try {
      hydrate(client, JSON.parse(saved) as DehydratedState);
      // Readable at once, and read again at once: another may have worked on since.
      void client.invalidateQueries({ refetchType: 'none' });
    } catch {
      localStorage.removeItem(key);
    }
  }
  let waiting: ReturnType<typeof setTimeout> | undefined;
  client.getQueryCache().subscribe(() => {
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      try {
        localStorage.setItem(
          key,
          JSON.stringify(dehydrate(client, { shouldDehydrateQuery: (query) => query.state.status === 'success' && !isSignedOut(query) })),
        );
      } catch {
        localStorage.removeItem(key);
      }
    }, 800);
  });
}

/** "Nobody is signed in" is never remembered: the next page asks again. */
const isSignedOut = (query: Query): boolean => query.queryKey[0] === 'me' && (query.state.data as { me: unknown } | undefined)?.me === null;

export const forgetLastRead = (): void => localStorage.removeItem(key);
