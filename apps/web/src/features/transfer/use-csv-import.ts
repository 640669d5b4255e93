import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { request, sendFile } from '../../platform/request.js';
import { csvImportQuery } from './operations.js';

/** Where no change is heard of, it is looked at this often, ms. */
const lookEveryMs = 1_000;

/** Sends a file and follows it to its end; what is followed may also be one that somebody sent earlier. */
export function useCsvImport(kind: string, file: File | null) {
  const client = useQueryClient();
  const [followed, follow] = useState<string | null>(null);
  const send = useMutation({
    mutationFn: async (isDry: boolean) =>
      (await sendFile(`/api/imports/${kind}?dryRun=${isDry}`, file ?? '', 'text/csv')) as { id: string },
    onSuccess: ({ id }) => {
      follow(id);
      void client.invalidateQueries({ queryKey: ['imports'] });
    },
  });
  const query = useQuery({
    queryKey: ['import', followed],
    queryFn: async () => (await request(csvImportQuery, { id: followed ?? '' })).csvImport,
    enabled: followed !== null,
    refetchInterval: ({ state: { data } }) => (data === undefined || data.state === 'going' ? lookEveryMs : false),
  });
  const one = followed === null ? undefined : query.data;
  const isIn = one?.state === 'done' && !one.dryRun;
  useEffect(() => {
    if (isIn) void client.invalidateQueries();
  }, [isIn, client]);
  const reset = () => {
    send.reset();
    follow(null);
  };
  const isGoing = followed !== null && (one === undefined || one.state === 'going');
  return { send, fault: send.error ?? query.error, one, isGoing, followed, follow, reset };
}
