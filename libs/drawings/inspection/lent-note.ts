import type { Lent } from '#tour-file';
import { type Node, node } from '../tree/index.js';
import { code, hash, heading, lines, paged, says } from './paged.js';

/** Kit of others as a note speaks of it. */
interface NotedKit {
  readonly itemId: string;
  readonly kind: string;
  readonly model: string;
  readonly count: number | null;
  readonly owner: string;
  readonly depot: string;
  readonly lent: Lent;
}

/** Delivery note and return note of kit of others: what it is, its paper, its condition both ways, with room for two names each. */
export function lentNote({ itemId, kind, model, count, owner, depot, lent }: NotedKit, printedOn: string): Node {
  const { delivered, givenBack, paper, cleared } = lent;
  const handed = (word: string, note: Lent['delivered'] | undefined): (string | Node | null)[] => [
    word,
    note?.on ?? '–',
    note?.condition ?? '–',
    note?.by ?? '–',
  ];
  return paged(
    { left: `${itemId} · kit of ${owner}`, right: `printed ${printedOn}` },
    node('h1', {}, givenBack ? 'Delivery note and return note' : 'Delivery note'),
    lines(
      ['', 'What is on file'],
      [
        ['Kit of', `${owner} (${lent.by})`],
        ['Serial', code(itemId)],
        ['What', `${kind}, ${model}${count === null ? '' : `, ${count} of it`}`],
        ['Rated load on its plate', lent.ratedLoad ?? 'not noted'],
        ['Mass on its plate', lent.massKg === undefined ? 'not noted' : `${lent.massKg} kg`],
        ['Delivered to', depot],
        [
          'Its paper',
          paper
            ? node('span', {}, `${paper.name}, seen by ${paper.seenBy} on ${paper.seenOn}, SHA-256 `, hash(paper.sha256))
            : cleared
              ? `missing; cleared by ${cleared.by} on ${cleared.on}: ${cleared.reason}`
              : '■ missing: it must not be used',
        ],
      ],
    ),
    heading('Handed over'),
    lines(['', 'Day', 'Condition', 'Noted by'], [handed('Delivered', delivered), handed('Given back', givenBack)]),
    heading('Signatures'),
    lines(
      ['', 'For the owner', 'For us'],
      [
        ['Delivered', ' ', ' '],
        ['Given back', ' ', ' '],
      ],
      'signed',
    ),
    says('A paper on file does not replace the examination, nor the look at the kit before it is used.', 'caution'),
  );
}
