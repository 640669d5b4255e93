import { useInfiniteQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { useParams, useSearchParams } from 'react-router';
import { graphql } from '#contracts';
import { type LabelOf, faultOfPrefix, labelSheets } from '#drawings';
import { itemKinds } from '#tour-file';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Page } from '../../ui/page.js';
import { PaperFields, Sheets, stockOf, useKeptOnDevice } from './paper.js';
import { ShowLabels } from './show-labels.js';

const labelsQuery = graphql(`
  query LabelItems($search: String, $kind: String, $serials: [ID!], $after: String) {
    items(search: $search, kind: $kind, serials: $serials, first: 200, after: $after) {
      totalCount isMoreThanCounted
      pageInfo { hasNextPage endCursor }
      edges { node { id kind model } }
    }
  }
`);

/** Labels for what the register holds: of one item, of a kind, or of what a search finds. Carts get two, one for each of two opposite faces. */
export function Labels() {
  const { showId } = useParams();
  return showId === undefined ? <ItemLabels /> : <ShowLabels />;
}

function ItemLabels() {
  const asked = useAsked();
  const kept = useKeptOnDevice();
  const query = useInfiniteQuery({
    queryKey: ['items', 'labels', asked.found, asked.kind, asked.serials],
    queryFn: ({ pageParam }) =>
      request(labelsQuery, {
        ...{ search: asked.found || null, kind: asked.kind || null, after: pageParam },
        serials: asked.serials.length === 0 ? null : asked.serials,
      }),
    initialPageParam: null as string | null,
    getNextPageParam: ({ items }) => (items.pageInfo.hasNextPage ? items.pageInfo.endCursor : undefined),
  });
  const items = useMemo(() => query.data?.pages.flatMap((page) => page.items.edges.map(({ node }) => labelOf(node))) ?? [], [query.data]);
  const fault = faultOfPrefix(kept.prefix);
  const stock = stockOf(kept);
  const pages = useMemo(
    () =>
      stock && fault === null
        ? labelSheets(items, { stock, house: location.origin, prefix: kept.prefix, skip: Number(kept.skip) || 0 })
        : [],
    [items, stock, fault, kept.prefix, kept.skip],
  );
  const count = items.reduce((sum, each) => sum + (each.faces ?? 1), 0);
  return (
    <Page
      title="Labels"
      lede="The serial to read from three metres, a square code that opens the item on any phone, and bars for a reader."
    >
      <Choices asked={asked} kept={kept} fault={fault} />
      <div className="noprint">
        <Faults of={query.error} />
        {fault && <p role="alert">Wanted: {fault}.</p>}
        <p className="quiet" role="status">
          {query.isPending ? 'Reading ...' : `${count} labels on ${pages.length} pages.`} Print at 100 %, without margins of the printer.
          Each code opens {location.origin}: print from the address that the phones open.
        </p>
        <p className="row">
          <button type="button" disabled={pages.length === 0} onClick={() => window.print()}>
            Print
          </button>
          {query.hasNextPage && (
            <button type="button" className="plain" disabled={query.isFetchingNextPage} onClick={() => void query.fetchNextPage()}>
              Take the next 200 as well
            </button>
          )}
        </p>
      </div>
      <Sheets pages={pages} />
    </Page>
  );
}

interface Given {
  asked: ReturnType<typeof useAsked>;
  kept: ReturnType<typeof useKeptOnDevice>;
  fault: string | null;
}

function Choices({ asked, kept, fault }: Given) {
  return (
    <div className="fields noprint">
      {asked.serials.length > 0 && (
        <p>{asked.serials.length === 1 ? 'Of 1 item selected.' : `Of ${asked.serials.length} items selected.`}</p>
      )}
      <label>
        Serials or words
        <input type="search" value={asked.found} onChange={(event) => asked.change('find', event.target.value)} />
      </label>
      <label>
        Kind
        <select value={asked.kind} onChange={(event) => asked.change('kind', event.target.value)}>
          <option value="">all kinds</option>
          {itemKinds.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </label>
      <PaperFields kept={kept} />
      <label>
        GS1 company prefix, if your company has one
        <input
          inputMode="numeric"
          value={kept.prefix}
          aria-invalid={fault !== null}
          onChange={(event) => kept.keep('prefix', event.target.value.trim())}
        />
      </label>
    </div>
  );
}

/** What labels are wanted of stands in the address. */
function useAsked() {
  const [search, setSearch] = useSearchParams();
  const change = (name: 'find' | 'kind', value: string) =>
    setSearch(
      (before) => {
        before.set(name, value);
        if (value === '') before.delete(name);
        return before;
      },
      { replace: true },
    );
  return { found: search.get('find') ?? '', kind: search.get('kind') ?? '', serials: search.getAll('serial'), change };
}

const labelOf = ({ id, kind, model }: { id: string; kind: string; model: string }): LabelOf => ({
  id,
  kind,
  model,
  ...(kind === 'cart' && { faces: 2 }),
});
