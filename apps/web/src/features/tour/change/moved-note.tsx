import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useLocation, useNavigate } from 'react-router';
import { Faults } from '../../../ui/faults.js';
import { byDay } from '../edit/new-tour.js';
import { type ReadTour, saveOver } from '../edit/save-over.js';
import { houseTours } from '../edit/use-tour-edits.js';

/** A show that was moved just now, with the days on which it was. */
export interface Moved {
  readonly showId: string;
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/** Said once, on the page that follows; taken back beside whatever was saved since. */
export function MovedNote({ of }: { of: ReadTour }) {
  const moved = (useLocation().state as { moved?: Moved } | null)?.moved;
  const navigate = useNavigate();
  const client = useQueryClient();
  const undo = useMutation({
    mutationFn: ({ showId, from, to }: Moved) =>
      saveOver(houseTours, of, {
        ...of.tour,
        shows: byDay(of.tour.shows.map((each) => (each.id === showId ? { ...each, from, to } : each))),
      }),
    onSuccess: async () => {
      await client.invalidateQueries();
      await navigate('.', { replace: true, state: null });
    },
  });
  const show = of.tour.shows.find((each) => each.id === moved?.showId);
  if (!moved || !show) return null;
  const days = (from: string, to: string): string => (from === to ? from : `${from} to ${to}`);
  return (
    <>
      <p role="status">
        {moved.name} is moved from {days(moved.from, moved.to)} to {days(show.from, show.to)}.{' '}
        <button type="button" className="plain small" disabled={undo.isPending} onClick={() => undo.mutate(moved)}>
          Undo the move
        </button>
      </p>
      <Faults of={undo.error} />
    </>
  );
}
