import { type Words, tell } from '../table/index.js';
import { against } from './findings/index.js';
import { plural } from './parts/index.js';

export const places: Words['places'] = {
  empty: () => 'No box was found for this place; the findings of the carts say which model is short.',
  pinned: ({ id }) => `The hang asks for ${id} at this place by its serial.`,
  'barred-since': ({ id, why }) => `${id} may not be used as things stand now: ${tell(against, why)}. Plan again.`,
  'no-other': ({ what, id }) =>
    what === 'box'
      ? `No other box that may be used is left for this place: without ${id} the show is one short.`
      : `No other cart can take this load: without ${id} there are too few.`,
  'more-moves': ({ id, other, moves, atLeast }) =>
    `Without ${id} the shortest list takes ${plural(moves, 'box move')} more${moves > atLeast ? ` (at least ${atLeast} more is proved)` : ''}; ${other} would stand here.`,
  'more-carts': ({ id, other, carts }) =>
    `Without ${id} the list is as short, but ${plural(carts, 'cart')} more would be touched; ${other} would stand here.`,
  'due-sooner': ({ id, other, boxes }) =>
    `Without ${id} the list is as short, but ${plural(boxes, 'box', 'boxes')} more would fall due within 30 days after the tour; ${other} would stand here.`,
  'more-used': ({ id, other, uses }) =>
    `Without ${id} the list is as short, but its boxes have ${plural(uses, 'use')} more behind them; ${other} would stand here.`,
  'one-of-several': ({ id, other }) =>
    `Several would serve as well; ${id} is one of them, ${other} another. The same inputs always choose the same.`,
  'shorter-without': ({ id, other, moves }) =>
    `The list of this plan was not proved to be the shortest: without ${id}, with ${other} here, there is one of ${plural(moves, 'box move')} fewer. Plan again.`,
};
