import { writeCsv } from '#kernel';
import { type Item, type ModelKind, csvColumns, modelCell, modelColumns } from '#tour-file';
import type { Agent } from './test-app.js';

export type Cells = Readonly<Record<string, string>>;

/** What came of a write: its status and what it says. */
export interface Said {
  readonly status: number;
  readonly body: any;
}

const write = { 'content-type': 'text/csv', 'x-cartwright': '1' };

async function send(who: Agent, path: string, body: string, headers: Record<string, string> = write): Promise<Said> {
  const reply = await who.fetch(path, { method: 'POST', headers, body });
  return { status: reply.status, body: await reply.json() };
}

const rowsOf = (cells: readonly Cells[]): string => {
  const heading = Object.keys(cells[0] ?? {});
  return writeCsv([heading, ...cells.map((each) => heading.map((name) => each[name] ?? ''))]);
};

/** The cells of an item as its form shows them. */
export async function itemCells(who: Agent, id: string): Promise<Cells> {
  const { item } = (await who.graphql('query($id: ID!) { item(id: $id) { item } }', { id })).data.item;
  return Object.fromEntries(csvColumns(item.kind).map(({ heading, cell }) => [heading, cell(item as Item)]));
}

/** The cells of a model as its form shows them. */
export async function modelCells(who: Agent, kind: ModelKind, name: string): Promise<Cells> {
  const { catalogueModels } = (await who.graphql('{ catalogueModels { kind model data } }')).data;
  const { data } = catalogueModels.find((each: any) => each.kind === kind && each.model === name);
  return Object.fromEntries(modelColumns(kind).map((column) => [column.heading, modelCell(data, column)]));
}

/** One row from a form. */
export const saveForm = (who: Agent, path: string, was: Cells, wanted: Cells, why = ''): Promise<Said> =>
  send(who, `/api/csv/${path}/edit?reason=${encodeURIComponent(why)}`, rowsOf([was, wanted]));

/** Rows of a file. */
export const sendRows = (who: Agent, path: string, rows: readonly Cells[], why = ''): Promise<Said> =>
  send(who, `/api/csv/${path}?dryRun=false&reason=${encodeURIComponent(why)}`, rowsOf(rows));

export const sendTour = (who: Agent, file: object): Promise<Said> =>
  send(who, '/api/tours/file?dryRun=false', JSON.stringify(file), { ...write, 'content-type': 'application/json' });
