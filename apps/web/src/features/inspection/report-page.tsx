import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from 'react-router';
import { graphql } from '#contracts';
import { lifeList, reportSheet } from '#drawings';
import type { InspectedItem, Kept, ReportLine } from '#records';
import type { Examination } from '#tour-file';
import { request } from '../../platform/request.js';
import { today } from '../../platform/today.js';
import { Drawing } from '../../ui/drawing.js';
import { Loaded, Page } from '../../ui/page.js';
import { inspectedItems } from './operations.js';
import { usePrint } from '../../ui/use-print.js';

const recordQuery = graphql(`
  query ReportOfItem($id: ID!, $after: String) {
    item(id: $id) {
      records(first: 50, after: $after) {
        pageInfo { hasNextPage endCursor }
        edges { node { id examination recordedBy recordedAt reason file { name sha256 } kept lines } }
      }
    }
  }
`);

type RecordNode = Awaited<ReturnType<typeof recordOf>>;

async function recordOf(itemId: string, recordId: string) {
  for (let after: string | null = null; ; ) {
    const { records }: { records: Records } = (await request(recordQuery, { id: itemId, after })).item as never;
    const found = records.edges.find((each) => each.node.id === recordId)?.node;
    if (found || !records.pageInfo.hasNextPage) return found ?? null;
    after = records.pageInfo.endCursor;
  }
}

interface Records {
  readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string | null };
  readonly edges: readonly {
    readonly node: {
      readonly id: string;
      readonly examination: Examination;
      readonly recordedBy: string;
      readonly recordedAt: string;
      readonly reason: string | null;
      readonly file: { readonly name: string; readonly sha256: string } | null;
      readonly kept: Kept;
      readonly lines: readonly ReportLine[];
    };
  }[];
}

function useReport(itemId: string, recordId: string) {
  return useQuery({
    queryKey: ['item', itemId, 'report', recordId],
    queryFn: async () => {
      const [record, items] = await Promise.all([recordOf(itemId, recordId), inspectedItems({ ids: [itemId] })]);
      return { record, item: items[0] };
    },
  });
}

const sheetOf = (item: InspectedItem, record: NonNullable<RecordNode>) =>
  reportSheet({ item, record, lines: record.lines, kept: record.kept, printedOn: today() });

const nothing = <p>There is no such record of this item.</p>;

/** The report of one examination on the screen, every field of it. */
export function ReportScreen() {
  const { itemId = '', recordId = '' } = useParams();
  const query = useReport(itemId, recordId);
  return (
    <Page
      title={`${itemId}, report`}
      actions={
        <>
          <Link to={`/register/${encodeURIComponent(itemId)}`}>Back to {itemId}</Link>
          <Link to={`/print/records/${encodeURIComponent(itemId)}/${recordId}`} target="_blank">
            Print it
          </Link>
        </>
      }
    >
      <Loaded query={query}>{({ record, item }) => (record && item ? <Drawing of={sheetOf(item, record)} wide /> : nothing)}</Loaded>
    </Page>
  );
}

export function ReportPrint() {
  const { itemId = '', recordId = '' } = useParams();
  const query = useReport(itemId, recordId);
  usePrint(query.data?.record !== undefined, `${itemId} · report`);
  return <Loaded query={query}>{({ record, item }) => (record && item ? <Drawing of={sheetOf(item, record)} /> : nothing)}</Loaded>;
}

/** An item's life, day by day: bought, declared, examined, what happened, where it was. */
export function ItemLife({ id }: { id: string }) {
  const query = useQuery({ queryKey: ['item', id, 'life'], queryFn: () => inspectedItems({ ids: [id] }) });
  return <Loaded query={query}>{([item]) => (item ? <Drawing of={lifeList(item)} wide /> : null)}</Loaded>;
}
