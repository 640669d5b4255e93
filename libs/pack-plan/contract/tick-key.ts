import type { PackPlan } from './plan.js';

/**
 * What is ticked off a plan: a row of a truck as it is loaded, as it comes off at the venue and as it goes in again for home, a step of a hang's lift sequence, a box move. `subject` is the truck's or the hang's id (empty for a
 * move), `place` the number in its list, from 1. Names are for people and stand in no key.
 */
export interface TickKey {
  readonly kind: (typeof tickKinds)[number];
  readonly subject: string;
  readonly place: number;
}

export const tickKinds = ['row', 'step-up', 'step-down', 'move', 'unload', 'load-out'] as const;
/** The ways in which rows of a truck are worked. */
export const rowWays = ['row', 'unload', 'load-out'] as const;
export type RowWay = (typeof rowWays)[number];

export const rowKey = (truckId: string, row: number, way: RowWay = 'row'): TickKey => ({ kind: way, subject: truckId, place: row });
export const stepKey = (hangId: string, way: 'up' | 'down', step: number): TickKey => ({
  kind: `step-${way}`,
  subject: hangId,
  place: step,
});
export const moveKey = (move: number): TickKey => ({ kind: 'move', subject: '', place: move });

/** The key as one text, the same for equal keys and for no others: each part ends where the next begins. */
export const tickText = ({ kind, subject, place }: TickKey): string => `${kind}:${encodeURIComponent(subject)}:${place}`;

/** Everything that can be ticked off a plan. */
function tickKeysOf({ truck, picks, carts }: Pick<PackPlan, 'truck' | 'picks' | 'carts'>): readonly TickKey[] {
  return [
    ...truck.trucks.flatMap(({ id, rows }) => rows.flatMap((row) => rowWays.map((way) => rowKey(id, row.number, way)))),
    ...picks.hangs.flatMap(({ hang, runningOrder }) => [
      ...runningOrder.goingUp.map((_step, index) => stepKey(hang, 'up', index + 1)),
      ...runningOrder.comingDown.map((_step, index) => stepKey(hang, 'down', index + 1)),
    ]),
    ...carts.moves.map((move) => moveKey(move.number)),
  ];
}

/** The key that a text stands for in this plan: as it is written now, or as it was up to version 0.1; undefined where the plan has none. */
export function tickKeyOf(plan: Pick<PackPlan, 'truck' | 'picks' | 'carts'>, text: string): TickKey | undefined {
  const keys = tickKeysOf(plan);
  return keys.find((key) => tickText(key) === text) ?? keys.find((key) => landedText(key) === text);
}

/** What stood on file, and on phones that had no connection, up to version 0.1: "T1 row 3", "Main left up 4", "move 2". */
const landedText = (key: TickKey): string => wordsOf(key, key.subject);

/** What a key stands for, to read: "T1 row 3", "Main left up 4", "move 2". */
export function tickWords(key: TickKey): string {
  return wordsOf(key, key.subject);
}

function wordsOf({ kind, place }: TickKey, name: string): string {
  const words = {
    row: `${name} row`,
    unload: `${name} off row`,
    'load-out': `${name} home row`,
    'step-up': `${name} up`,
    'step-down': `${name} down`,
    move: 'move',
  };
  return `${words[kind]} ${place}`;
}
