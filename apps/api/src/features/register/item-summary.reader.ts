import type { ItemSummary } from './register.types.js';

/** What a line of a list says of an item: columns of `item` for a SELECT, and the line made from them. */
export const summaryColumns = `item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item, item.stack_cart, item.stack_slot,
  item.due_on::text AS due_on, item.due_state`;

export interface SummaryRow {
  readonly id: string;
  readonly kind: string;
  readonly model: string;
  readonly state: string;
  readonly depot: string;
  readonly count: number | null;
  readonly in_item: string | null;
  readonly stack_cart: string | null;
  readonly stack_slot: number | null;
  readonly due_on: string | null;
  readonly due_state: 'due' | 'failed' | 'blocked' | 'no record' | null;
}

/** Dates are judged as of `today`, which is that of its depot. */
export function summaryOf(row: SummaryRow, today: string): ItemSummary {
  const { id, kind, model, state, depot, count, due_on: dueOn, due_state: due } = row;
  const dueState = due !== 'due' ? due : (dueOn ?? '') < today ? 'overdue' : 'in date';
  return { id, kind, model, state, depot, count, place: placeOf(row), dueOn, dueState };
}

function placeOf(row: SummaryRow): string {
  if (row.stack_cart !== null) return `${row.stack_cart}, slot ${row.stack_slot}`;
  if (row.in_item !== null) return `in ${row.in_item}`;
  return row.kind === 'box' ? `${row.depot}, on the floor` : row.depot;
}
