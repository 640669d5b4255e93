import { useInfiniteQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { dueMark } from '#drawings';
import { SavedFilters } from '../../ui/list/saved-filters.js';
import { More } from '../../ui/more.js';
import { Loaded, Page } from '../../ui/page.js';
import { type DatesLine, datesPage, useDatesAsked } from './dates-asked.js';
import { DatesChoices } from './dates-choices.js';
import { scrolls } from '../../ui/scrolls.js';

/** Everything that lifts, what runs out first at the top. */
export function Dates() {
  const { asked, put, search, show } = useDatesAsked();
  const isAll = Object.values(asked).every((each) => each === '');
  const query = useInfiniteQuery({
    queryKey: ['dates', asked.depot, asked.tour, asked.kind, asked.days],
    queryFn: ({ pageParam }) => datesPage(asked, 100, pageParam),
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
  });
  return (
    <Page
      title="Dates"
      lede="Every lifting item on file, what may not be used first, then what runs out first. Judged as of today."
      actions={
        <>
          <Link to={`/print/dates?${search}`} target="_blank">
            Print it
          </Link>
          <a href={`/api/csv/due?${search}`}>As CSV</a>
        </>
      }
    >
      <DatesChoices asked={asked} put={put} />
      <SavedFilters list="dates" search={search} show={show} />
      {asked.tour !== '' && (
        <p className="quiet">Kit is booked for a tour when a plan of it is released: what no released plan holds is not on this list.</p>
      )}
      <Loaded query={query}>
        {({ pages }) => {
          const items = pages.flatMap((page) => page.edges.map((edge) => edge.node));
          return items.length === 0 && !isAll ? (
            <p>Nothing that is examined answers to these choices. A depot is looked for as it is written on the items.</p>
          ) : items.length === 0 ? (
            <p>
              Nothing that lifts is on file. <Link to="/import">Import the register.</Link>
            </p>
          ) : (
            <DatesTable items={items} />
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

function DatesTable({ items }: { items: readonly DatesLine[] }) {
  return (
    <div {...scrolls}>
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
              <td>{dueMark(each)}</td>
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
}
