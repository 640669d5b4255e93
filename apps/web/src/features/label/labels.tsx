import { useInfiniteQuery } from '@tanstack/react-query';
import { useEffect, useMemo, useState } from 'react';
import { useSearchParams } from 'react-router';
import { graphql } from '#contracts';
import { type LabelOf, faultOfPrefix, labelSheets, labelStocks } from '#drawings';
import { itemKinds } from '#tour-file';
import { request } from '../../platform/request.js';
import { Drawing } from '../../ui/drawing.js';
import { Faults } from '../../ui/faults.js';
import { Page } from '../../ui/page.js';
import './labels.css';

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
  const stock = labelStocks.find((each) => each.id === kept.stock) ?? labelStocks[0];
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
      <Choices asked={asked} kept={kept} stock={stock?.id} fault={fault} />
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

/** The first two stand on the screen; all are printed. */
function Sheets({ pages }: { pages: ReturnType<typeof labelSheets> }) {
  const [isWhole, setWhole] = useState(false);
  return (
    <>
      <div className={isWhole ? 'labelpages' : 'labelpages few'}>
        {pages.map((each, index) => (
          <Drawing key={index} of={each} />
        ))}
      </div>
      {!isWhole && pages.length > 2 && (
        <p className="noprint">
          <button type="button" className="plain" onClick={() => setWhole(true)}>
            Show all {pages.length} pages
          </button>{' '}
          <span className="quiet">The first two are shown; all are printed.</span>
        </p>
      )}
    </>
  );
}

interface Given {
  asked: ReturnType<typeof useAsked>;
  kept: ReturnType<typeof useKeptOnDevice>;
  stock: string | undefined;
  fault: string | null;
}

function Choices({ asked, kept, stock, fault }: Given) {
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
      <label>
        Paper
        <select value={stock} onChange={(event) => kept.keep('stock', event.target.value)}>
          {labelStocks.map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
        </select>
      </label>
      <label>
        Labels used up on the first page
        <input inputMode="numeric" value={kept.skip} onChange={(event) => kept.keep('skip', event.target.value.replaceAll(/\D/g, ''))} />
      </label>
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

type Kept = Readonly<Record<'stock' | 'skip' | 'prefix', string>>;

/** The paper in the printer belongs to the place where it stands. */
function useKeptOnDevice(): Kept & { keep: (name: keyof Kept, value: string) => void } {
  const [kept, setKept] = useState<Kept>(() => ({
    stock: '',
    skip: '',
    prefix: '',
    ...(JSON.parse(localStorage.getItem('labels') ?? '{}') as Partial<Kept>),
  }));
  useEffect(() => localStorage.setItem('labels', JSON.stringify({ ...kept, skip: '' })), [kept]);
  return { ...kept, keep: (name, value) => setKept((before) => ({ ...before, [name]: value })) };
}
