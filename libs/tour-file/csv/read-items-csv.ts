import { readInput, shownText } from '#kernel';
import { type Item, type ItemKind, item as itemSchema } from '../shapes/index.js';
import { cellForms, cellNumber } from './cell-forms.js';
import { csvColumns } from './csv-columns.js';
import { type CsvFault, eachRecord, headingFaults } from './csv-fault.js';

export interface ItemsCsv {
  /** Items as the rows give them, without examinations and events, which are not part of a CSV. */
  readonly items: readonly Item[];
  /** Serial -> row of the file. */
  readonly rowOf: ReadonlyMap<string, number>;
  readonly faults: readonly CsvFault[];
}

const headingOf: Record<string, string> = {
  id: 'serial',
  model: 'model',
  state: 'state',
  reason: 'reason',
  depot: 'depot',
  in: 'in',
  owner: 'owner',
  hire: 'hired from',
  assetId: 'asset identifier',
  declaredOn: 'declared on',
  boughtOn: 'bought on',
  firstUsedOn: 'first used on',
  uses: 'uses',
  stack: 'boxes, top first',
  contentsKg: 'contents kg',
  count: 'count',
};

/** Records of a CSV (the first is the heading) to items of a kind; every fault with row, column, value and what would be right. */
export function readItemsCsv(kind: ItemKind, records: readonly (readonly string[])[]): ItemsCsv {
  const wanted = csvColumns(kind).map((each) => each.heading);
  const heading = (records[0] ?? []).map((each) => each.trim().toLowerCase());
  const faults = headingFaults(heading, wanted, ['serial', 'model', 'depot']);
  if (faults.length > 0) return { items: [], rowOf: new Map(), faults };

  const items: Item[] = [];
  const rowOf = new Map<string, number>();
  eachRecord(records, faults, (row, record) => {
    const read = readRow(kind, row, new Map(heading.map((name, at) => [name, record[at]!.trim()])), faults);
    if (!read) return;
    const twice = rowOf.get(read.id);
    if (twice !== undefined) {
      faults.push({ row, column: 'serial', value: `${read.id}, as in row ${twice}`, wanted: 'each serial once' });
      return;
    }
    rowOf.set(read.id, row);
    items.push(read);
  });
  return { items, rowOf, faults };
}

/** The item of a row with what no column of its kind holds, as it stands on file. */
export function withUnseen(given: Item, before: Item | undefined): Item {
  if (!before) return given;
  const headings = new Set(csvColumns(given.kind).map((each) => each.heading));
  const unseen = Object.entries(before).filter(([field]) => field !== 'kind' && !headings.has(headingOf[field] ?? ''));
  return { ...given, ...Object.fromEntries(unseen) };
}

/** Serials with blanks between, or with a semicolon after each where one holds a blank. */
const readStack = (cell: string): string[] =>
  cell
    .split(cell.includes(';') ? ';' : /\s+/)
    .map((each) => each.trim())
    .filter((each) => each !== '');

function readRow(kind: ItemKind, row: number, cells: ReadonlyMap<string, string>, faults: CsvFault[]): Item | undefined {
  const text = (heading: string): string | undefined => cells.get(heading) || undefined;
  const before = faults.length;
  const whole = (heading: string): number | undefined => {
    const cell = text(heading);
    if (cell === undefined) return undefined;
    const value = cellNumber(cell);
    if (value === undefined) faults.push({ row, column: heading, value: cell, wanted: cellForms.number.hint });
    return value;
  };
  const from = text('hired from');
  const to = text('hired to');
  if ((from === undefined) !== (to === undefined))
    faults.push({ row, column: from === undefined ? 'hired from' : 'hired to', value: '', wanted: 'both days of the hire, or neither' });
  const stack = kind === 'cart' ? readStack(text('boxes, top first') ?? '') : undefined;
  const candidate = {
    id: text('serial'),
    kind,
    model: text('model'),
    state: text('state') ?? 'in service',
    reason: text('reason'),
    depot: text('depot'),
    in: text('in'),
    owner: text('owner'),
    hire: from !== undefined && to !== undefined ? { from, to } : undefined,
    assetId: text('asset identifier'),
    declaredOn: text('declared on'),
    boughtOn: text('bought on'),
    firstUsedOn: text('first used on'),
    uses: whole('uses'),
    contentsKg: whole('contents kg'),
    count: whole('count'),
    stack,
  };
  if (faults.length > before) return undefined;
  const given = Object.fromEntries(Object.entries(candidate).filter(([, value]) => value !== undefined));
  const read = readInput(itemSchema, given);
  if (read.ok) return read.value;
  for (const fault of read.error) {
    const field = fault.field.split(/[.[]/)[0]!;
    faults.push({ row, column: headingOf[field] ?? field, value: shownText(fault.value), wanted: fault.wanted });
  }
  return undefined;
}
