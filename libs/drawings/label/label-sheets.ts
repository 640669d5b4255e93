import { type Node, node } from '../tree/index.js';
import { type Area, code128Modules, drawBars, drawSquare } from './symbols.js';
import { gs1Key } from './gs1-keys.js';

/** Paper with labels on it, millimetres; one column and row: a roll. Margins are those of the first label. */
export interface LabelStock {
  readonly id: string;
  readonly name: string;
  readonly page: { readonly width: number; readonly height: number };
  readonly columns: number;
  readonly rows: number;
  readonly label: { readonly width: number; readonly height: number };
  readonly first: { readonly x: number; readonly y: number };
  readonly step: { readonly x: number; readonly y: number };
}

const even = (id: string, page: LabelStock['page'], columns: number, rows: number, label: LabelStock['label']): LabelStock => ({
  ...{ id, page, columns, rows, label, step: { x: label.width, y: label.height } },
  name: `${label.width} x ${label.height} mm, ${columns * rows === 1 ? 'one a page' : `${columns * rows} on ${page.width === 210 ? 'A4' : 'Letter'}`}`,
  first: { x: (page.width - columns * label.width) / 2, y: (page.height - rows * label.height) / 2 },
});

/** Sizes that office shops sell. */
export const labelStocks: readonly LabelStock[] = [
  even('a4-105x74', { width: 210, height: 297 }, 2, 4, { width: 105, height: 74 }),
  even('a4-70x37', { width: 210, height: 297 }, 3, 8, { width: 70, height: 37 }),
  even('letter-102x51', { width: 215.9, height: 279.4 }, 2, 5, { width: 101.6, height: 50.8 }),
  even('roll-100x50', { width: 100, height: 50 }, 1, 1, { width: 100, height: 50 }),
  even('roll-62x29', { width: 62, height: 29 }, 1, 1, { width: 62, height: 29 }),
];

export interface LabelOf {
  readonly id: string;
  readonly kind: string;
  readonly model: string;
  /** Faces that are labelled: two of a cart, on opposite sides. */
  readonly faces?: number;
  /** What a phone opens, from the house on; the item in the register where nothing is said. Of a code that is no address: its text. */
  readonly opens?: { readonly path: string } | { readonly text: string };
}

interface Given {
  readonly stock: LabelStock;
  /** Where the house is on the network, without a slash at the end. */
  readonly house: string;
  /** GS1 company prefix of the owner; empty: none. */
  readonly prefix?: string;
  /** Places of the first page that are used up. */
  readonly skip?: number;
}

/** Pages of labels in the order given, each page a drawing in its own size. */
export function labelSheets(items: readonly LabelOf[], { stock, house, prefix = '', skip = 0 }: Given): readonly Node[] {
  const labels = items.flatMap((item) => Array.from({ length: item.faces ?? 1 }, () => item));
  const perPage = stock.columns * stock.rows;
  const places = [...Array.from({ length: skip % perPage }, () => null), ...labels];
  return Array.from({ length: Math.ceil(places.length / perPage) }, (_, page) =>
    node(
      'svg',
      {
        ...{ viewBox: `0 0 ${stock.page.width} ${stock.page.height}`, width: `${stock.page.width}mm`, height: `${stock.page.height}mm` },
        ...{ class: 'labels', role: 'img', 'aria-label': `Labels, page ${page + 1}` },
      },
      ...places.slice(page * perPage, (page + 1) * perPage).flatMap((item, index) => {
        if (item === null) return [];
        const x = stock.first.x + (index % stock.columns) * stock.step.x;
        const y = stock.first.y + Math.floor(index / stock.columns) * stock.step.y;
        return drawLabel(item, { x, y, ...stock.label }, addressOf(item, house), prefix);
      }),
    ),
  );
}

/** What the bars say. */
const barText = ({ id, opens }: LabelOf): string => (opens && 'text' in opens ? opens.text : id);

function addressOf({ id, opens }: LabelOf, house: string): string {
  if (opens === undefined) return `${house}/register/${encodeURIComponent(id)}`;
  return 'path' in opens ? house + opens.path : opens.text;
}

/** Free paper around everything: printers and scissors are not exact. */
const rim = 3;

/** The serial as large as fits, what it is, a square code with the address of the item, and bars with its serial or its key. */
function drawLabel(item: LabelOf, { x, y, width, height }: Area, address: string, prefix: string): Node[] {
  const side = Math.min(height - 2 * rim, width * 0.38);
  const textX = x + rim + side + 1;
  const room = width - side - 2 * rim - 1;
  // A digit or capital of this face is 0.6 of its size wide.
  const size = Math.min(height * 0.3, room / (0.62 * Math.max(3, item.id.length)));
  const key = prefix === '' || item.opens ? null : gs1Key(prefix, item.kind === 'cart' ? 'returnable' : 'individual', item.id);
  const modules = code128Modules(key ?? barText(item), key !== null);
  const barsTop = y + rim + size * 1.05 + height * 0.14;
  const small = Math.max(2.2, Math.min(3.6, height * 0.065));
  const bars =
    modules === null ? null : { x: textX, y: barsTop, width: room, height: Math.max(5, y + height - rim - small * 1.3 - barsTop) };
  return [
    drawSquare(address, x + rim, y + (height - side) / 2, side).drawn,
    node('text', { x: textX, y: y + rim + size * 0.8, class: 'serial', 'font-size': size }, item.id),
    node(
      'text',
      { x: textX, y: y + rim + size * 0.8 + height * 0.09, class: 'what', 'font-size': small },
      fitted(`${item.kind}, ${item.model}`, room / (small * 0.52)),
    ),
    ...(bars && modules ? [drawBars(modules, bars).drawn] : []),
    ...(key === null
      ? []
      : [
          node(
            'text',
            { x: textX, y: y + height - rim, class: 'what', 'font-size': small },
            fitted(`(${key.slice(0, 4)}) ${key.slice(4)}`, room / (small * 0.52)),
          ),
        ]),
  ];
}

const fitted = (text: string, characters: number): string =>
  text.length <= characters ? text : `${text.slice(0, Math.max(1, Math.floor(characters) - 3))} ...`;
