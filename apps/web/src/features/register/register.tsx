import { keepPreviousData, useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import { itemKinds, itemStates } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { More } from '../../ui/more.js';
import { Page } from '../../ui/page.js';
import { Catalogue } from './catalogue.js';
import { NewItem } from './item-form.js';

const itemsQuery = graphql(`
  query Items($search: String, $kind: String, $state: String, $after: String) {
    items(search: $search, kind: $kind, state: $state, first: 50, after: $after) {
      totalCount isMoreThanCounted
      pageInfo { hasNextPage endCursor }
      edges { node { id kind model state depot count place dueOn dueState } }
    }
  }
`);

const countWords = ({ totalCount, isMoreThanCounted }: { totalCount: number; isMoreThanCounted: boolean }): string =>
  isMoreThanCounted ? `more than ${totalCount} items` : `${totalCount} ${totalCount === 1 ? 'item' : 'items'}`;

export function Register({ me }: { me: Person }) {
  const [search, setSearch] = useState('');
  const [kind, setKind] = useState('');
  const [state, setState] = useState('');
  const query = useInfiniteQuery({
    queryKey: ['items', search, kind, state],
    queryFn: ({ pageParam }) => request(itemsQuery, { search, kind: kind || null, state: state || null, after: pageParam }),
    initialPageParam: null as string | null,
    getNextPageParam: ({ items }) => (items.pageInfo.hasNextPage ? items.pageInfo.endCursor : undefined),
    placeholderData: keepPreviousData,
  });
  const rows = query.data?.pages.flatMap((page) => page.items.edges.map((edge) => edge.node)) ?? [];
  return (
    <Page
      title="Register"
      lede="Every box, cart, grid, hoist, shackle, sling, pin batch, loom, case and truck."
      actions={<Link to="/register-extract">Extract for an inspector</Link>}
    >
      <div className="fields">
        <label>
          Search
          <input type="search" value={search} onChange={(event) => setSearch(event.target.value)} placeholder="serial, model, reason ..." />
        </label>
        <label>
          Kind
          <select value={kind} onChange={(event) => setKind(event.target.value)}>
            <option value="">all kinds</option>
            {itemKinds.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <label>
          State
          <select value={state} onChange={(event) => setState(event.target.value)}>
            <option value="">all states</option>
            {itemStates.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
      </div>
      <Faults of={query.error} />
      <p className="quiet" role="status">
        {query.data ? countWords(query.data.pages[0]!.items) : 'Reading ...'}
        {rows.length > 0 && (
          <>
            {' · '}
            <Link to={`/labels?${new URLSearchParams({ ...(search && { find: search }), ...(kind && { kind }) })}`}>Labels for these</Link>
          </>
        )}
      </p>
      {query.data && rows.length === 0 && (
        <p>
          Nothing fits. Search for less, or <Link to="/import">import items from a CSV file</Link>.
        </p>
      )}
      <div className="scroll">
        <table>
          <thead>
            <tr>
              <th>Serial</th>
              <th>State</th>
              <th>Last day of use</th>
              <th>Kind</th>
              <th>Model</th>
              <th>Where</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((each) => (
              <tr key={each.id}>
                <td className="mono">
                  <Link to={`/register/${encodeURIComponent(each.id)}`}>{each.id}</Link>
                </td>
                <td>
                  {each.state === 'in service' ? '○' : '■'} {each.state}
                </td>
                <td>{each.dueState === null ? '' : (each.dueOn ?? each.dueState)}</td>
                <td>
                  {each.kind}
                  {each.count !== null ? ` × ${each.count}` : ''}
                </td>
                <td>{each.model}</td>
                <td>{each.place}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <More of={query} />
      <NewItem me={me} />
      <Catalogue me={me} />
      <p>
        <Link to="/rules">Make load rules, examination rules and rigging systems</Link>
      </p>
    </Page>
  );
}
