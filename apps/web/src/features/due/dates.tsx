import { useInfiniteQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { More } from '../../ui/more.js';
import { Loaded, Page } from '../../ui/page.js';

const datesQuery = graphql(`
  query Dates($after: String) {
    examinedItems(first: 100, after: $after) {
      pageInfo { hasNextPage endCursor }
      edges { node { id kind model place dueOn dueState state count } }
    }
  }
`);

const marks: Record<string, string> = { 'in date': '○', overdue: '■', 'no record': '■', blocked: '■', failed: '■' };

/** Everything that lifts, what runs out first at the top. */
export function Dates() {
  const query = useInfiniteQuery({
    queryKey: ['dates'],
    queryFn: async ({ pageParam }) => (await request(datesQuery, { after: pageParam })).examinedItems,
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
  });
  return (
    <Page title="Dates" lede="Every lifting item on file, what may not be used first, then what runs out first. Judged as of today.">
      <Loaded query={query}>
        {({ pages }) => {
          const items = pages.flatMap((page) => page.edges.map((edge) => edge.node));
          return items.length === 0 ? (
            <p>
              Nothing that lifts is on file. <Link to="/import">Import the register.</Link>
            </p>
          ) : (
            <div className="scroll">
              <table>
                <thead>
                  <tr>
                    <th>Item</th>
                    <th>State</th>
                    <th>Last day of use</th>
                    <th>Kind</th>
                    <th>Model</th>
                    <th>Where</th>
                  </tr>
                </thead>
                <tbody>
                  {items.map((each) => (
                    <tr key={each.id}>
                      <td className="mono">
                        <Link to={`/register/${encodeURIComponent(each.id)}`}>{each.id}</Link>
                      </td>
                      <td>{each.state === 'in service' ? `${marks[each.dueState!] ?? '◐'} ${each.dueState}` : `■ ${each.state}`}</td>
                      <td>{each.dueOn ?? 'none'}</td>
                      <td>
                        {each.kind}
                        {each.count ? ` batch of ${each.count}` : ''}
                      </td>
                      <td>{each.model}</td>
                      <td>{each.place}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          );
        }}
      </Loaded>
      <More of={query} />
      <p className="caution">
        Dates are computed from the records on file. They do not replace the examination: a competent person decides what may be used, and
        the maker’s instructions and local law come first.
      </p>
    </Page>
  );
}
