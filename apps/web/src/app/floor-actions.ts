import { doMove, setStackMutation, undoMove } from '../features/cart/operations.js';
import { recordCounts } from '../features/count/operations.js';
import { addReading } from '../features/hang/operations.js';
import { reportFault } from '../features/floor/fault/operations.js';
import { benchTest, countTrunk, readSplays } from '../features/floor/prep/operations.js';
import { returnCart, returnItems } from '../features/floor/return/operations.js';
import { confirmMutation, tickMutation } from '../features/plan/operations.js';
import type { ActionKinds } from '../platform/outbox/outbox.js';
import { Refused, request } from '../platform/request.js';
import type { RequestOptions } from '../platform/requests-over.js';

type AnswerOf<O> = O extends { __apiType?: (variables: never) => infer A } ? A : never;
type Values<O> = O extends { __apiType?: (variables: infer V) => unknown } ? V : never;

/** What is done on the floor and may wait for a network. A kind keeps its name: devices hold actions that an earlier version put in. */
export const floorActions: ActionKinds = {
  tick: { send: (values: Values<typeof tickMutation>, options) => request(tickMutation, values, options), reads: ['progress'] },
  move: {
    send: (values: Values<typeof doMove>, options) => request(doMove, values, options),
    reads: ['show', 'progress'],
    answers: (values: Values<typeof doMove>, answer: AnswerOf<typeof doMove>) => ({
      key: ['work-list', values.planId],
      data: answer.doMove,
    }),
  },
  undo: {
    send: (values: Values<typeof undoMove>, options) => request(undoMove, values, options),
    reads: ['show', 'progress'],
    answers: (values: Values<typeof undoMove>, answer: AnswerOf<typeof undoMove>) => ({
      key: ['work-list', values.planId],
      data: answer.undoMove,
    }),
  },
  stack: {
    send: (values: Values<typeof setStackMutation>, options) => request(setStackMutation, values, options),
    reads: ['work-list', 'show'],
  },
  cart: { send: sendCart, reads: ['progress', 'barred'] },
  reading: { send: (values: Values<typeof addReading>, options) => request(addReading, values, options), reads: ['rigging'] },
  'return cart': {
    send: (values: Values<typeof returnCart>, options) => request(returnCart, values, options),
    reads: ['return sheet', 'work-list', 'show'],
  },
  'return items': {
    send: (values: Values<typeof returnItems>, options) => request(returnItems, values, options),
    reads: ['return sheet', 'work-list'],
  },
  fault: {
    send: (values: Values<typeof reportFault>, options) => request(reportFault, values, options),
    reads: ['fault sheet', 'open faults', 'barred', 'work-list', 'show'],
  },
  bench: {
    send: (values: Values<typeof benchTest>, options) => request(benchTest, values, options),
    reads: ['prep sheet', 'open faults', 'barred', 'work-list', 'show'],
  },
  splays: { send: (values: Values<typeof readSplays>, options) => request(readSplays, values, options), reads: ['prep sheet'] },
  trunk: { send: (values: Values<typeof countTrunk>, options) => request(countTrunk, values, options), reads: ['prep sheet'] },
  count: { send: sendCount, reads: ['counts', 'show'] },
};

/** What the gate bars comes back to whoever read it, also hours later. */
async function sendCart(values: Values<typeof confirmMutation>, options: RequestOptions): Promise<void> {
  const { agrees, barred } = (await request(confirmMutation, values, options)).confirmCart;
  if (!agrees && barred.length > 0) throw new Refused(barred.map((each) => each.sentence).join(' '), 'refused');
}

async function sendCount(values: Values<typeof recordCounts>, options: RequestOptions): Promise<void> {
  const answer = (await request(recordCounts, values, options)).recordCounts;
  if (answer.__typename === 'CountRefusal') throw new Refused(answer.sentence, 'refused');
}
