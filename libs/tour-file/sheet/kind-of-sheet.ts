import { csvColumns, examinationColumns, modelColumns, modelKinds } from '../csv/index.js';
import { type ItemKind, itemKinds } from '../shapes/index.js';
import { type Column, matchColumns, plainName } from './match-columns.js';

/** Other words for headings of ours, in use above such columns. */
const alsoCalled: Readonly<Record<string, readonly string[]>> = {
  serial: ['serial number', 'serial no', 'id', 'unit'],
  model: ['type', 'product'],
  depot: ['warehouse', 'home'],
  count: ['quantity', 'qty', 'pieces'],
  in: ['packed in', 'inside', 'case'],
  state: ['status'],
  'mass kg': ['weight kg', 'mass', 'weight'],
  'rated load': ['WLL', 'working load limit', 'SWL'],
  'rigging system': ['system'],
  maker: ['manufacturer'],
  'asset identifier': ['asset', 'asset number', 'barcode'],
  'bought on': ['purchased', 'date of purchase'],
};

const headingsOf = (kind: string): readonly string[] => {
  const [of, name] = kind.split('/');
  if (of === 'items' && itemKinds.some((each) => each === name)) return csvColumns(name as ItemKind).map((each) => each.heading);
  const models = modelKinds.find((each) => of === 'models' && each === name);
  if (models) return modelColumns(models).map((each) => each.heading);
  return kind === 'examinations' ? examinationColumns.map((each) => each.heading) : [];
};

/** The columns of a kind of rows ("items/box", "models/boxes", "examinations"); none of a kind that there is not. */
export function knownColumns(kind: string): readonly Column[] {
  const headings = headingsOf(kind);
  return headings.map((heading) => {
    const also = (alsoCalled[heading] ?? []).filter((each) => !headings.some((other) => plainName(other) === plainName(each)));
    return { heading, also };
  });
}

/** What no sheet of the kind can do without. */
export const neededColumns = (kind: string): readonly string[] =>
  kind === 'examinations' ? ['serial', 'examined on', 'outcome'] : kind.startsWith('items/') ? ['serial', 'model', 'depot'] : ['model'];

/** Models before what is made of them, a thing before what it rides in or carries, examinations last. */
export const importOrder: readonly string[] = [
  ...[
    'pins',
    'looms',
    'shackles',
    'slings',
    'cells',
    'aids',
    'controls',
    'hoists',
    'cases',
    'trucks',
    'boxes',
    'grids',
    'frames',
    'carts',
  ].map((each) => `models/${each}`),
  ...['case', 'truck', 'box', 'grid', 'frame', 'hoist', 'cell', 'control', 'aid', 'shackle', 'sling', 'pin', 'loom', 'cart'].map(
    (each) => `items/${each}`,
  ),
  'examinations',
];

/** Every heading of any kind: what a row must look like to be a heading. */
export const allColumns: readonly Column[] = [...new Map(importOrder.flatMap(knownColumns).map((each) => [each.heading, each])).values()];

const singular = (word: string): string => word.replace(/(x|sh|ch)es$/, '$1').replace(/s$/, '');

/**
 * What kind of rows a sheet holds, by what it is called ("hoists.csv", "models of boxes", a sheet named "Carts") and by what its columns are headed;
 * undefined where both leave it open: a person says it.
 */
export function kindOfSheet(called: string, headings: readonly string[]): string | undefined {
  const words = called
    .replace(/\.\w+$/, '')
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .map(singular);
  const isOfItems = matchColumns(headings, knownColumns('items/box')).some((each) => each === 'serial');
  if (isOfItems && matchColumns(headings, knownColumns('examinations')).some((each) => each === 'outcome')) return 'examinations';
  const named = importOrder.filter((kind) => words.includes(singular(kind.split('/')[1] ?? kind)));
  const told = named.filter((kind) => kind.startsWith(isOfItems ? 'items/' : 'models/'));
  if (told.length === 1) return told[0];
  return onlyByHeadings(headings, isOfItems ? 'items/' : 'models/');
}

/** Headings that one kind alone has. */
function onlyByHeadings(headings: readonly string[], of: string): string | undefined {
  const fits = importOrder
    .filter((kind) => kind.startsWith(of))
    .map((kind) => ({ kind, known: matchColumns(headings, knownColumns(kind)).filter((each) => each !== null).length }))
    .sort((a, b) => b.known - a.known);
  const [best, next] = fits;
  return best && best.known > 2 && best.known > (next?.known ?? 0) ? best.kind : undefined;
}
