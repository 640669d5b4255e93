import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { meaningOf } from './interests.js';
import { listenForChanges } from './live-changes.js';

/** Reads again exactly what others have changed, as soon as it is told. */
export function useLive(): void {
  const client = useQueryClient();
  useEffect(
    () =>
      listenForChanges(
        (topics) => {
          const meaning = (query: { queryKey: readonly unknown[] }) => meaningOf(topics, query);
          void client.invalidateQueries({ predicate: (query) => meaning(query) === 'read again' });
          void client.invalidateQueries({ predicate: (query) => meaning(query) === 'stale', refetchType: 'none' });
        },
        () => void client.invalidateQueries({ queryKey: ['me'] }),
      ),
    [client],
  );
}
