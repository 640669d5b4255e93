import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { UnderWay } from '../../ui/under-way.js';

const makingQuery = graphql(
  `query LatestMaking($tourId: ID!, $showId: ID!) { latestJob(kind: "make", tourId: $tourId, showId: $showId) { id state progress askedBy } }`,
);
const stopMutation = graphql(`mutation StopMaking($id: ID!) { cancelJob(id: $id) { id state } }`);

/** A plan of this show that is being made though nobody here asked for it: by somebody else, or here before the page was loaded again. */
export function PlannedByOthers({ tourId, showId }: { tourId: string; showId: string }) {
  const client = useQueryClient();
  const key = ['search', tourId, showId, 'make'];
  const latest = useQuery({
    queryKey: key,
    queryFn: async () => (await request(makingQuery, { tourId, showId })).latestJob ?? null,
    refetchInterval: ({ state: { data } }) => (data?.state === 'waiting' || data?.state === 'running' ? 700 : false),
  });
  const stop = useMutation({
    mutationFn: (id: string) => request(stopMutation, { id }),
    onSuccess: () => client.invalidateQueries({ queryKey: key }),
  });
  const making = latest.data;
  const isOver = making?.state === 'done';
  useEffect(() => {
    if (isOver) void client.invalidateQueries({ queryKey: ['show', tourId, showId] });
  }, [isOver, making?.id, client, tourId, showId]);
  if (making?.state !== 'waiting' && making?.state !== 'running') return null;
  return <UnderWay job={making} onCancel={() => stop.mutate(making.id)} of={`Planning, asked for by ${making.askedBy}`} />;
}
