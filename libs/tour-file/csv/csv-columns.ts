import type { Item, ItemKind } from '../shapes/index.js';

/** A column of a kind's CSV: its heading in plain words, and the cell of an item. Reading goes the other way in `read-items-csv`. */
export interface CsvColumn {
  readonly heading: string;
  readonly cell: (item: Item) => string;
}

const optional = (value: string | number | undefined): string => (value === undefined ? '' : String(value));

const stackCell = (serials: readonly string[]): string =>
  serials.some((each) => /\s/.test(each)) ? serials.map((each) => `${each};`).join(' ') : serials.join(' ');

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
  { heading: 'bought on', cell: (item) => optional(item.boughtOn) },
  { heading: 'first used on', cell: (item) => optional(item.firstUsedOn) },
];

const extra: Partial<Record<ItemKind, readonly CsvColumn[]>> = {
  box: [{ heading: 'uses', cell: (item) => optional(item.uses) }],
  hoist: [{ heading: 'uses', cell: (item) => optional(item.uses) }],
  cart: [{ heading: 'boxes, top first', cell: (item) => stackCell(item.stack ?? []) }],
  case: [{ heading: 'contents kg', cell: (item) => optional(item.contentsKg) }],
  pin: [{ heading: 'count', cell: (item) => optional(item.count) }],
  shackle: [{ heading: 'count', cell: (item) => optional(item.count) }],
  sling: [{ heading: 'count', cell: (item) => optional(item.count) }],
  loom: [{ heading: 'count', cell: (item) => optional(item.count) }],
  frame: [{ heading: 'count', cell: (item) => optional(item.count) }],
  cell: [{ heading: 'count', cell: (item) => optional(item.count) }],
  control: [{ heading: 'count', cell: (item) => optional(item.count) }],
  aid: [{ heading: 'count', cell: (item) => optional(item.count) }],
};

export const csvColumns = (kind: ItemKind): readonly CsvColumn[] => [...common, ...(extra[kind] ?? [])];

/** A made-up row of each kind, for the example file. */
export const csvExamples: Record<ItemKind, Item> = {
  box: example('box', 'EX-B1', 'Plover', { uses: 12 }),
  cart: example('cart', 'EX-K1', 'Cart of four', { stack: [] }),
  grid: example('grid', 'EX-G1', 'Grid 14', { in: 'GC-1' }),
  hoist: example('hoist', 'EX-H1', 'Chain hoist 2.5 t', { in: 'HC-1', uses: 40 }),
  shackle: example('shackle', 'EX-SH1', 'Bow shackle 3.25', { count: 24, in: 'HT-1' }),
  sling: example('sling', 'EX-SL1', 'Round sling 1 m', { count: 12, in: 'HT-1' }),
  pin: example('pin', 'EX-FP1', 'Link pin 12', { count: 40, in: 'HT-1' }),
  loom: example('loom', 'EX-LM1', 'Loom of four, 20 m', { count: 16 }),
  frame: example('frame', 'EX-FR1', 'Frame Plover to Dunlin', { in: 'GC-1' }),
  cell: example('cell', 'EX-LC1', 'Load cell 3.25 t', { in: 'HC-1' }),
  control: example('control', 'EX-CO1', 'Controller of eight', { in: 'HC-1' }),
  aid: example('aid', 'EX-AI1', 'Chain bag 24 m', { count: 8, in: 'HC-1' }),
  case: example('case', 'EX-HT1', 'Hardware trunk', { contentsKg: 30 }),
  truck: example('truck', 'EX-T1', 'Semi-trailer 13.6 m', {
    owner: 'Wharf Haulage (invented)',
    hire: { from: '2027-03-01', to: '2027-03-19' },
  }),
};

function example(kind: ItemKind, id: string, model: string, more: Partial<Item>): Item {
  return { id, kind, model, state: 'in service', depot: 'Ferry Lane', examinations: [], events: [], ...more };
}
