import { type Node, node } from '../tree/index.js';

/** What stands at the top of every page. */
export interface PageHead {
  readonly left: string;
  readonly right: string;
}

/** A sheet of as many pages as it takes: the head is printed again on each, the number of the page and of all pages at its foot. */
export const paged = (head: PageHead, ...content: (Node | null)[]): Node =>
  node(
    'section',
    { class: 'sheetpage numbered' },
    node(
      'table',
      { class: 'paged' },
      node(
        'thead',
        {},
        node('tr', {}, node('td', {}, node('div', { class: 'pagehead' }, node('b', {}, head.left), node('span', {}, head.right)))),
      ),
      node('tbody', {}, node('tr', {}, node('td', {}, ...content))),
    ),
  );

type Cell = string | Node | null;

/** A table in small print that may run over pages; its heading is printed again. */
export const lines = (head: readonly string[], rows: readonly (readonly Cell[])[], kind = ''): Node =>
  node(
    'table',
    { class: `tight ${kind}`.trim() },
    node('thead', {}, node('tr', {}, ...head.map((each) => node('th', {}, each)))),
    node('tbody', {}, ...rows.map((row) => node('tr', {}, ...row.map((each) => node('td', {}, each))))),
  );

export const heading = (text: string): Node => node('h2', {}, text);
export const says = (text: string, kind?: string): Node => node('p', { class: kind }, text);
export const code = (text: string): Node => node('span', { class: 'mono' }, text);
/** A hash in full, broken where the column ends. */
export const hash = (text: string): Node => node('span', { class: 'hash' }, text);
