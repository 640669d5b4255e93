import { useSyncExternalStore } from 'react';

const query = matchMedia('(max-width: 760px)');

/** Whether the screen is as narrow as a phone. */
export function useNarrow(): boolean {
  return useSyncExternalStore(
    (changed) => {
      query.addEventListener('change', changed);
      return () => query.removeEventListener('change', changed);
    },
    () => query.matches,
  );
}
