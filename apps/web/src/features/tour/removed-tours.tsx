import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { putTourBack, removedToursQuery } from './edit/removal-operations.js';

/** Tours that were removed, each with the way back. */
export function RemovedTours({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['removed tours'], queryFn: () => request(removedToursQuery) });
  const client = useQueryClient();
  const back = useMutation({
    mutationFn: ({ id, version }: { id: string; version: number }) => request(putTourBack, { tourId: id, expectedVersion: version }),
    onSuccess: () => client.invalidateQueries(),
  });
  const tours = query.data?.removedTours ?? [];
  if (tours.length === 0) return null;
  return (
    <details>
      <summary>
        {tours.length} removed {tours.length === 1 ? 'tour' : 'tours'}
      </summary>
      <ul className="plain">
        {tours.map((tour) => (
          <li key={tour.id} className="row">
            <span>
              {tour.name}, {tour.prepFrom} to {tour.returnTo}; removed on {tour.removedOn}
              {tour.removedBy ? ` by ${tour.removedBy}` : ''}
              {tour.revisions > 0 && `. Closed with ${tour.revisions} released ${tour.revisions === 1 ? 'revision' : 'revisions'} on file`}.
            </span>
            {me.role === 'system' && (
              <button
                type="button"
                className="plain small"
                aria-label={`Put ${tour.name} back`}
                disabled={back.isPending}
                onClick={() => back.mutate(tour)}
              >
                Put it back
              </button>
            )}
          </li>
        ))}
      </ul>
      <Faults of={back.error} />
    </details>
  );
}
