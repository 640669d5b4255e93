import type { Response } from 'express';
import { writeCsv } from '#kernel';
import type { ItemSummary } from './register.types.js';

/** Lines of one page of the file: the whole register never stands in memory. */
export const pageOfCsv = 200;

const columns: readonly (readonly [heading: string, cell: (item: ItemSummary) => string | number | null])[] = [
  ['item', ({ id }) => id],
  ['state', ({ state }) => state],
  ['date', ({ dueState }) => dueState],
  ['last day of use', ({ dueOn }) => dueOn],
  ['kind', ({ kind }) => kind],
  ['model', ({ model }) => model],
  ['count', ({ count }) => count],
  ['depot', ({ depot }) => depot],
  ['place', ({ place }) => place],
];

interface ListPage {
  readonly edges: readonly { readonly node: ItemSummary }[];
  readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor?: string | null };
}

/** A list of items as CSV (RFC 4180), page by page; the first page is read before anything is sent, so that bad input is told as such. */
export async function sendListAsCsv(
  response: Response,
  name: string,
  pageAfter: (after: string | null) => Promise<ListPage>,
): Promise<void> {
  let next = await pageAfter(null);
  response.setHeader('content-type', 'text/csv; charset=utf-8');
  response.setHeader('content-disposition', `attachment; filename="${name}"`);
  response.write(writeCsv([columns.map(([heading]) => heading)]));
  for (;;) {
    const lines = next.edges.map(({ node }) => columns.map(([, cell]) => cell(node)));
    if (lines.length > 0) response.write(writeCsv(lines));
    if (!next.pageInfo.hasNextPage || response.destroyed) break;
    next = await pageAfter(next.pageInfo.endCursor ?? null);
  }
  response.end();
}
