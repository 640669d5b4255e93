import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { UnderWay } from '../../ui/under-way.js';

const latestQuery = graphql(
  `query LatestSearch($tourId: ID!, $showId: ID!) { latestJob(kind: "search", tourId: $tourId, showId: $showId) { id state progress sentence askedBy } }`,
);
const startMutation = graphql(
  `mutation StartSearch($tourId: ID!, $showId: ID!) { startSearch(tourId: $tourId, showId: $showId) { id state } }`,
);
const stopMutation = graphql(`mutation StopSearch($id: ID!) { cancelJob(id: $id) { id state } }`);

/** Asks for fewer moves and shorter truck loads; tells how far it is and how it ended. */
export function LongerSearch({ tourId, showId }: { tourId: string; showId: string }) {
  const client = useQueryClient();
  const key = ['search', tourId, showId];
  const latest = useQuery({
    queryKey: key,
    queryFn: async () => (await request(latestQuery, { tourId, showId })).latestJob ?? null,
    refetchInterval: ({ state: { data } }) => (data?.state === 'waiting' || data?.state === 'running' ? 700 : false),
  });
  const again = () => client.invalidateQueries({ queryKey: key });
  const start = useMutation({ mutationFn: () => request(startMutation, { tourId, showId }), onSuccess: again });
  const stop = useMutation({ mutationFn: (id: string) => request(stopMutation, { id }), onSuccess: again });
  const search = latest.data;
  const going = search?.state === 'waiting' || search?.state === 'running';
  const ended = search?.state === 'done';
  useEffect(() => {
    if (ended) void client.invalidateQueries({ queryKey: ['show', tourId, showId] });
  }, [ended, search?.id, client, tourId, showId]);
  return (
    <div className="longer">
      {going ? (
        <UnderWay job={search} onCancel={() => stop.mutate(search.id)} of="Looking longer" />
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
