import { keepPreviousData, useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Page } from '../../ui/page.js';

const itemsQuery = graphql(`
  query Items($search: String, $kind: String, $state: String, $after: String) {
    items(search: $search, kind: $kind, state: $state, first: 50, after: $after) {
      totalCount
      pageInfo { hasNextPage endCursor }
      edges { node { id kind model state depot count place dueOn dueState } }
    }
  }
`);
const modelsQuery = graphql(`query Models { catalogueModels { kind model itemCount data } riggingSystems }`);

const kinds = ['box', 'cart', 'grid', 'hoist', 'shackle', 'sling', 'pin', 'loom', 'case', 'truck'];
const states = ['in service', 'quarantined', 'in repair', 'retired'];

export function Register() {
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
    <Page title="Register" lede="Every box, cart, grid, hoist, shackle, sling, pin batch, loom, case and truck.">
      <div className="fields">
        <label>
          Search
          <input type="search" value={search} onChange={(event) => setSearch(event.target.value)} placeholder="serial, model, reason ..." />
        </label>
        <label>
          Kind
          <select value={kind} onChange={(event) => setKind(event.target.value)}>
            <option value="">all kinds</option>
            {kinds.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
        <label>
          State
          <select value={state} onChange={(event) => setState(event.target.value)}>
            <option value="">all states</option>
            {states.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
      </div>
      <Faults of={query.error} />
      <p className="quiet" role="status">
        {query.data ? `${query.data.pages[0]!.items.totalCount} items` : 'Reading ...'}
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
              <th>Kind</th>
              <th>Model</th>
              <th>Where</th>
              <th>State</th>
              <th>Last day of use</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((each) => (
              <tr key={each.id}>
                <td className="mono">
                  <Link to={`/register/${encodeURIComponent(each.id)}`}>{each.id}</Link>
                </td>
                <td>
                  {each.kind}
                  {each.count !== null ? ` × ${each.count}` : ''}
                </td>
                <td>{each.model}</td>
                <td>{each.place}</td>
                <td>
                  {each.state === 'in service' ? '○' : '■'} {each.state}
                </td>
                <td>{each.dueState === null ? '' : (each.dueOn ?? each.dueState)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {query.hasNextPage && (
        <button type="button" className="plain" disabled={query.isFetchingNextPage} onClick={() => void query.fetchNextPage()}>
          Show more
        </button>
      )}
      <Catalogue />
    </Page>
  );
}

function Catalogue() {
  const query = useQuery({ queryKey: ['models'], queryFn: () => request(modelsQuery) });
  return (
    <details>
      <summary>Catalogue models and rigging systems</summary>
      <Loaded query={query}>
        {({ catalogueModels, riggingSystems }) => (
          <>
            <table>
              <thead>
                <tr>
                  <th>Model</th>
                  <th>Kind</th>
                  <th className="num">Items</th>
                  <th>Figures on file</th>
                </tr>
              </thead>
              <tbody>
                {catalogueModels.map((each) => (
                  <tr key={`${each.kind} ${each.model}`}>
                    <td>{each.model}</td>
                    <td>{each.kind}</td>
                    <td className="num">{each.itemCount}</td>
                    <td>
                      <details>
                        <summary>Show</summary>
                        <Figures of={each.data} />
                      </details>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
            {(
              riggingSystems as {
                id: string;
                manual: { title: string; revision: string };
                approved?: { by: string; on: string };
                goingUp: string[];
                comingDown: string[];
              }[]
            ).map((system) => (
              <div key={system.id}>
                <h3>Rigging system {system.id}</h3>
                <p>
                  {system.manual.title}, revision {system.manual.revision}.{' '}
                  {system.approved
                    ? `Approved by ${system.approved.by} on ${system.approved.on}.`
                    : '■ Example, not for use: not approved.'}
                </p>
                <h3>Going up</h3>
                <ol>
                  {system.goingUp.map((step) => (
                    <li key={step}>{step}</li>
                  ))}
                </ol>
                <h3>Coming down</h3>
                <ol>
                  {system.comingDown.map((step) => (
                    <li key={step}>{step}</li>
                  ))}
                </ol>
                <p className="caution">
                  The maker’s manual comes first. Nothing leaves the ground until the person in charge of lifting says so.
                </p>
              </div>
            ))}
          </>
        )}
      </Loaded>
    </details>
  );
}

/** The figures of a model, a line each. */
function Figures({ of }: { of: unknown }) {
  const lines = Object.entries(of as Record<string, unknown>);
  return (
    <ul className="plain">
      {lines.map(([key, value]) => (
        <li key={key}>
          {words(key)}: <span className="mono">{typeof value === 'string' ? value : JSON.stringify(value)}</span>
        </li>
      ))}
    </ul>
  );
}

const words = (key: string): string => key.replaceAll(/([A-Z])/g, ' $1').toLowerCase();
