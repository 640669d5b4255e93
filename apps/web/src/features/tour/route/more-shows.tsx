import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type Tour, designsOfRoute, showsOfRoute } from '#tour-file';
import { Faults } from '../../../ui/faults.js';
import { byDay } from '../edit/new-tour.js';
import { saveOver } from '../edit/save-over.js';
import { houseTours } from '../edit/use-tour-edits.js';
import { RouteFields } from './route-fields.js';
import { rowsOf, useRouteSheet } from './use-route-sheet.js';

/** The shows of a route sheet beside those that the tour has. `taken`: ids of shows that were removed. */
export function MoreShows({ tour, version, taken }: { tour: Tour; version: number; taken: readonly string[] }) {
  const client = useQueryClient();
  const sheet = useRouteSheet(tour.shows[0]?.timeZone ?? 'Europe/London');
  const rows = rowsOf(sheet.route);
  const add = useMutation({
    mutationFn: () => {
      const designs = designsOfRoute(rows, tour.designs ?? []);
      const ids = [...taken, ...tour.shows.map((each) => each.id)];
      const shows = byDay([...tour.shows, ...showsOfRoute(rows, tour.shows[0]?.loadRule ?? '', designs, ids)]);
      return saveOver(houseTours, { tour, version }, { ...tour, ...(designs.length > 0 ? { designs } : {}), shows });
    },
    onSuccess: async () => {
      sheet.clear();
      await client.invalidateQueries();
    },
  });
  return (
    <details>
      <summary>Add shows of a route sheet</summary>
      <RouteFields of={sheet} />
      <button type="button" disabled={rows.length === 0 || add.isPending} onClick={() => add.mutate()}>
        Add {rows.length === 0 ? 'the' : rows.length} shows
      </button>
      <Faults of={add.error} />
    </details>
  );
}
