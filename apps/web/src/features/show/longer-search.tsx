import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';

const latestQuery = graphql(
  `query LatestSearch($tourId: ID!, $showId: ID!) { latestSearch(tourId: $tourId, showId: $showId) { id state progress sentence askedBy } }`,
);
const startMutation = graphql(
  `mutation StartSearch($tourId: ID!, $showId: ID!) { startSearch(tourId: $tourId, showId: $showId) { id state } }`,
);
const stopMutation = graphql(`mutation StopSearch($searchId: ID!) { stopSearch(searchId: $searchId) { id state } }`);

/** Asks the worker for shorter truck loads; tells how far it is and how it ended. */
export function LongerSearch({ tourId, showId }: { tourId: string; showId: string }) {
  const client = useQueryClient();
  const key = ['search', tourId, showId];
  const latest = useQuery({
    queryKey: key,
    queryFn: async () => (await request(latestQuery, { tourId, showId })).latestSearch ?? null,
    refetchInterval: ({ state: { data } }) => (data?.state === 'waiting' || data?.state === 'running' ? 700 : false),
  });
  const again = () => client.invalidateQueries({ queryKey: key });
  const start = useMutation({ mutationFn: () => request(startMutation, { tourId, showId }), onSuccess: again });
  const stop = useMutation({ mutationFn: (searchId: string) => request(stopMutation, { searchId }), onSuccess: again });
  const search = latest.data;
  const going = search?.state === 'waiting' || search?.state === 'running';
  const ended = search?.state === 'done';
  useEffect(() => {
    if (ended) void client.invalidateQueries({ queryKey: ['show', tourId, showId] });
  }, [ended, search?.id, client, tourId, showId]);
  return (
    <div className="longer">
      {going ? (
        <p role="status">
          <progress max={1} value={search.state === 'waiting' ? undefined : search.progress} />{' '}
          {search.state === 'waiting' ? 'Waiting for a worker' : `${Math.round(search.progress * 100)} % of the search done`}{' '}
          <button type="button" className="plain" onClick={() => stop.mutate(search.id)}>
            Stop
          </button>
        </p>
      ) : (
        <p>
          <button type="button" className="plain" onClick={() => start.mutate()} disabled={start.isPending}>
            Look longer for fewer moves and shorter loads
          </button>{' '}
          {search && <span className="quiet">{search.sentence}</span>}
        </p>
      )}
      <Faults of={start.error ?? stop.error} />
    </div>
  );
}
