import { isoWeekOf } from '#kernel';
import type { CartLoad } from '#pack-plan';
import { drawDue } from '../due/index.js';
import { type Node, type Units, formatMass, node } from '../tree/index.js';
import { type SheetContext, caution, findingList, mono, sheet, table, tickBox } from '../paper/index.js';

const ordinalOf = (load: CartLoad): string => `cart ${load.number} of ${load.of}`;

/** An arrow from the line between two boxes to the one at which the splay is set. */
function splayWords({ position, splaySetAtPosition: at }: CartLoad['boxes'][number]): string {
  if (at === null) return '';
  return at === position ? `↓ at box ${at}` : at === 0 ? '↑ at the grid' : `↑ at box ${at}`;
}

/** The frames that ride on top of a box. */
const frameWords = ({ frames = [] }: CartLoad, position: number): string =>
  frames
    .filter((each) => each.position === position)
    .map((each) => ` · ${each.model} rides here`)
    .join('');

/** One page for one cart, to be read from two metres away. `code` is a drawn code of the cart's id, where there is one. */
export function cartCardSheet(context: SheetContext, load: CartLoad, code: Node | null = null, units: Units = 'metric'): Node {
  const setAt = {
    'in the cart': 'to the box above, set in the cart',
    'at the point': 'to the box above, set at the point',
    'to the grid': 'to the grid',
  };
  const rows = load.boxes.flatMap((box) => [
    node(
      'tr',
      {},
      node(
        'td',
        { class: 'joint', colspan: 4 },
        `${box.splayDeg}° ${splayWords(box)}`,
        node('small', {}, `${setAt[box.splaySet]}${frameWords(load, box.position)}`),
      ),
    ),
    node(
      'tr',
      {},
      node('td', { class: 'k' }, String(box.slot)),
      node('td', { class: 's' }, box.serial ?? 'MISSING', node('small', {}, `position ${box.position} from the top · ${box.model}`)),
      node('td', { class: 'a' }),
      node('td', { class: 'tick' }),
    ),
  ]);
  const positions = load.boxes.map((box) => box.position);
  return sheet(
    { ...context, of: load.hang },
    load.hangName,
    `${ordinalOf(load)} · boxes ${positions[0]} to ${positions.at(-1)}`,
    node('div', { class: 'top' }, node('div', { class: 'big mono' }, load.cart ?? 'no cart'), code),
    node('table', { class: 'slots' }, node('tbody', {}, ...rows)),
    node(
      'p',
      {},
      `Top of the stack is the highest in the air. Front of the cart to the audience. ${formatMass(load.massKg, units)} with the cart.`,
    ),
    load.exceptions.length > 0 ? node('p', { class: 'stop' }, `${load.exceptions.map((each) => each.sentence).join('; ')}.`) : null,
    caution(
      'Pins and lifting steps: the lift sequence of this rigging system. Nothing leaves the ground until the person in charge of lifting says so.',
    ),
  );
}

export function dueSheet(context: SheetContext): Node {
  const { due, findings } = context.plan;
  const rows = due.items.map((item) => [
    mono(item.item),
    item.kind,
    item.where,
    item.lastExaminedOn ?? 'none',
    item.dueOn ?? '–',
    item.state,
  ]);
  const visits = due.visits.days.map((day) => [day.on, isoWeekOf(day.on).week, day.items.join(', ')]);
  return sheet(
    context,
    'Examinations due',
    `${due.from} to ${due.to}`,
    drawDue(due),
    table(['Item', 'Kind', 'Where', 'Last examined', 'Due', 'State'], rows),
    node('h2', {}, due.visits.count === 0 ? 'No examiner visit is needed' : `Fewest examiner visits: ${due.visits.count}`),
    visits.length > 0 ? table(['Day', 'Week', 'To be examined'], visits) : null,
    due.visits.cannotBeSaved.length > 0
      ? node('p', { class: 'stop' }, `No visit day on the list can keep these in date: ${due.visits.cannotBeSaved.join(', ')}.`)
      : null,
    findingList(findings, 'due'),
    caution(due.caution),
  );
}

/** The list of box moves, round by round. */
export function moveSheet(context: SheetContext): Node {
  const { carts, findings } = context.plan;
  const proof = carts.status === 'optimal' ? 'No shorter list exists.' : `At least ${carts.bound} are needed.`;
  return sheet(
    context,
    'Box moves',
    `${carts.boxMoves} moves. ${proof}`,
    table(
      ['', { right: 'No.' }, { right: 'Round' }, 'Box', 'From', 'To', 'Why'],
      carts.moves.map((move) => [
        tickBox(),
        { right: String(move.number) },
        { right: String(move.round) },
        mono(move.box),
        move.from,
        move.to,
        move.why,
      ]),
    ),
    findingList(findings, 'carts'),
  );
}
