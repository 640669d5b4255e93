import { Link } from 'react-router';
import type { Person } from '../../../platform/person.js';
import { Faults } from '../../../ui/faults.js';
import { SavedFilters } from '../../../ui/list/saved-filters.js';
import { More } from '../../../ui/more.js';
import { Page } from '../../../ui/page.js';
import { Catalogue } from '../catalogue.js';
import { NewItem } from '../item-form.js';
import { useItems, useItemsAddress } from './items-asked.js';
import { ItemsFilters } from './items-filters.js';
import { ItemsTable } from './items-table.js';
import { useSelected } from './selected.js';
import { Selection } from './selection.js';

const countWords = ({ totalCount, isMoreThanCounted }: { totalCount: number; isMoreThanCounted: boolean }): string =>
  isMoreThanCounted ? `more than ${totalCount} items` : `${totalCount} ${totalCount === 1 ? 'item' : 'items'}`;

export function Register({ me }: { me: Person }) {
  const { asked, put, search, show } = useItemsAddress();
  const query = useItems(asked);
  const selection = useSelected();
  const first = query.data?.pages[0]?.items;
  const rows = query.data?.pages.flatMap((page) => page.items.edges.map((edge) => edge.node)) ?? [];
  const labels = new URLSearchParams({ ...(asked.search && { find: asked.search }), ...(asked.kind && { kind: asked.kind }) });
  return (
    <Page
      title="Register"
      lede="Every box, cart, grid, hoist, shackle, sling, pin batch, loom, case and truck."
      actions={<Link to="/register-extract">Extract for an inspector</Link>}
    >
      <ItemsFilters asked={asked} put={put} />
      <SavedFilters list="register" search={search} show={show} />
      <Faults of={query.error} />
      <p className="quiet" role="status">
        {first ? countWords(first) : 'Reading ...'}
        {rows.length > 0 && (
          <>
            {' · '}
            <a href={`/api/csv/register?${search}`}>These as CSV</a>
            {' · '}
            <Link to={`/labels?${labels}`}>Labels for these</Link>
          </>
        )}
      </p>
      <Selection of={selection} me={me} />
      {query.data && rows.length === 0 && (
        <p>
          Nothing fits. Search for less, or <Link to="/import">import items from a CSV file</Link>.
        </p>
      )}
      <ItemsTable rows={rows} sort={asked.sort} put={(sort) => put('sort', sort)} {...selection} />
      <More of={query} />
      <NewItem me={me} />
      <Catalogue me={me} />
      <p>
        <Link to="/rules">Make load rules, examination rules and rigging systems</Link>
      </p>
    </Page>
  );
}
