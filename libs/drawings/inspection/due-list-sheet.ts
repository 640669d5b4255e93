import { type Node, node } from '../tree/index.js';
import { code, lines, paged, says } from './paged.js';

/** What a line of the due list says; days are plain dates, null where there is none. */
interface DueLine {
  readonly id: string;
  readonly kind: string;
  readonly model: string;
  readonly count?: number | null;
  readonly state: string;
  readonly place: string;
  readonly dueOn?: string | null;
  readonly dueState?: string | null;
}

/** What was chosen, in words for people; empty: all. */
interface DueChoices {
  readonly depot: string;
  readonly tour: string;
  readonly kind: string;
  readonly days: string;
}

const chosen = ({ depot, tour, kind, days }: DueChoices): string =>
  [
    depot === '' ? 'all depots' : `depot ${depot}`,
    tour === '' ? 'all kit, booked or not' : `booked for the tour ${tour}`,
    kind === '' ? 'all kinds' : `kind ${kind}`,
    days === '' ? 'whatever day it runs out' : `what may not be used, and what runs out in the next ${days} days`,
  ].join(' · ');

/** In which state an item is on the day of the list, with its mark: what may not be used is a stop. */
export const dueMark = ({ state, dueState }: Pick<DueLine, 'state' | 'dueState'>): string =>
  state !== 'in service' ? `■ ${state}` : `${dueState === 'in date' ? '○' : '■'} ${dueState ?? 'not judged'}`;

/** The due list on paper: what may not be used first, then what runs out first. */
export function dueListSheet(items: readonly DueLine[], choices: DueChoices, printedOn: string): Node {
  const of = chosen(choices);
  return paged(
    { left: 'Due list', right: `${of} · printed ${printedOn}` },
    node('h1', {}, 'Due list'),
    says(`${items.length} items: ${of}. Judged as of the day at each depot.`),
    choices.tour === ''
      ? null
      : says('Kit is booked for a tour when a plan of it is released: what no released plan holds is not on this list.'),
    lines(
      ['Item', 'State', 'Last day of use', 'Kind, model', 'Where'],
      items.map((item) => [
        code(item.id),
        dueMark(item),
        item.dueOn ?? 'none',
        `${item.kind}, ${item.model}${item.count ? `, batch of ${item.count}` : ''}`,
        item.place,
      ]),
    ),
    says(
      'Dates are computed from the records on file. They do not replace the examination: a competent person decides what may be used, and the maker’s instructions and local law come first.',
      'caution',
    ),
  );
}
