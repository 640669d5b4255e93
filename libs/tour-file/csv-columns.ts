import type { Item, ItemKind } from './item.js';

/** A column of a kind's CSV: its heading in plain words, and the cell of an item. Reading goes the other way in `read-items-csv`. */
export interface CsvColumn {
  readonly heading: string;
  readonly cell: (item: Item) => string;
}

const optional = (value: string | number | undefined): string => (value === undefined ? '' : String(value));

const common: readonly CsvColumn[] = [
  { heading: 'serial', cell: (item) => item.id },
  { heading: 'model', cell: (item) => item.model },
  { heading: 'state', cell: (item) => item.state },
  { heading: 'reason', cell: (item) => optional(item.reason) },
  { heading: 'depot', cell: (item) => item.depot },
  { heading: 'in', cell: (item) => optional(item.in) },
  { heading: 'owner', cell: (item) => optional(item.owner) },
  { heading: 'hired from', cell: (item) => optional(item.hire?.from) },
  { heading: 'hired to', cell: (item) => optional(item.hire?.to) },
  { heading: 'asset identifier', cell: (item) => optional(item.assetId) },
  { heading: 'declared on', cell: (item) => optional(item.declaredOn) },
];

const extra: Partial<Record<ItemKind, readonly CsvColumn[]>> = {
  box: [{ heading: 'uses', cell: (item) => optional(item.uses) }],
  hoist: [{ heading: 'uses', cell: (item) => optional(item.uses) }],
  cart: [{ heading: 'boxes, top first', cell: (item) => (item.stack ?? []).join(' ') }],
  case: [{ heading: 'contents kg', cell: (item) => optional(item.contentsKg) }],
  pin: [{ heading: 'count', cell: (item) => optional(item.count) }],
  shackle: [{ heading: 'count', cell: (item) => optional(item.count) }],
  sling: [{ heading: 'count', cell: (item) => optional(item.count) }],
  loom: [{ heading: 'count', cell: (item) => optional(item.count) }],
};

export const csvColumns = (kind: ItemKind): readonly CsvColumn[] => [...common, ...(extra[kind] ?? [])];

/** A made-up row of each kind, for the example file. */
export const csvExamples: Record<ItemKind, Item> = {
  box: example('box', 'B-0001', 'Plover', { uses: 12 }),
  cart: example('cart', 'K01', 'Cart of four', { stack: ['B-0004', 'B-0003', 'B-0002', 'B-0001'] }),
  grid: example('grid', 'G-1', 'Grid 14', { in: 'GC-1' }),
  hoist: example('hoist', 'H-01', 'Chain hoist 2.5 t', { in: 'HC-1', uses: 40 }),
  shackle: example('shackle', 'SH-1', 'Bow shackle 3.25', { count: 24, in: 'HT-1' }),
  sling: example('sling', 'SL-1', 'Round sling 1 m', { count: 12, in: 'HT-1' }),
  pin: example('pin', 'FP-1', 'Link pin 12', { count: 40, in: 'HT-1' }),
  loom: example('loom', 'LM-1', 'Loom of four, 20 m', { count: 16 }),
  case: example('case', 'HT-1', 'Hardware trunk', { contentsKg: 30 }),
  truck: example('truck', 'T1', 'Semi-trailer 13.6 m', {
    owner: 'Wharf Haulage (invented)',
    hire: { from: '2027-03-01', to: '2027-03-19' },
  }),
};

function example(kind: ItemKind, id: string, model: string, more: Partial<Item>): Item {
  return { id, kind, model, state: 'in service', depot: 'Ferry Lane', examinations: [], events: [], ...more };
}
