import type { Words } from '../table/index.js';
import { plural } from './parts/index.js';

export const improvements: Words['improvements'] = {
  'going-on': ({ moves, atLeast }) =>
    `This list of ${plural(moves, 'move')} is not proved to be the shortest; none has fewer than ${atLeast}. Cartwright goes on looking.`,
  shorter: ({ moves, shorter, atLeast }) =>
    `A shorter list is ready: ${plural(shorter, 'move')} instead of ${moves}${shorter > atLeast ? `; none has fewer than ${atLeast}` : '; proved: none is shorter'}.`,
  proved: ({ moves }) => `Proved: no shorter list exists than these ${plural(moves, 'move')}.`,
  'not-shorter': ({ moves, atLeast }) =>
    `Cartwright looked longer and found no list shorter than ${plural(moves, 'move')}; it is proved that none has fewer than ${atLeast}.`,
  overtaken: () => 'Cartwright did not look for a shorter list: the inputs or the floor are no longer those of this plan.',
  'broken-off': ({ moves, atLeast }) =>
    `This list of ${plural(moves, 'move')} is not proved to be the shortest; none has fewer than ${atLeast}. Looking for a shorter one was broken off.`,
};
