import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { putShowBack } from './edit/removal-operations.js';

interface Removed {
  readonly showId: string;
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly removedOn: string;
  readonly removedBy?: string | null;
  readonly revisions: readonly string[];
}

/** Shows that were taken off the tour, each with the way back. */
export function RemovedShows({ tourId, version, shows, me }: { tourId: string; version: number; shows: readonly Removed[]; me: Person }) {
  const client = useQueryClient();
  const back = useMutation({
    mutationFn: (showId: string) => request(putShowBack, { tourId, showId, expectedVersion: version }),
    onSuccess: () => client.invalidateQueries(),
  });
  if (shows.length === 0) return null;
  return (
    <>
      <h3>Removed</h3>
      <ul className="plain">
        {shows.map((show) => (
          <li key={show.showId} className="row">
            <span>
              {show.name}, {show.from === show.to ? show.from : `${show.from} to ${show.to}`}; removed on {show.removedOn}
              {show.removedBy ? ` by ${show.removedBy}` : ''}
              {show.revisions.length > 0 && `. Closed with revision ${show.revisions.join(', ')} on file`}.
            </span>
            {me.role === 'system' && (
              <button
                type="button"
                className="plain small"
                aria-label={`Put ${show.name} back`}
                disabled={back.isPending}
                onClick={() => back.mutate(show.showId)}
              >
                Put it back
              </button>
            )}
          </li>
        ))}
      </ul>
      <Faults of={back.error} />
    </>
  );
}
