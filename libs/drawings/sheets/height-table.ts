import type { HangResult } from '#pack-plan';
import { headroomText } from '../hang/index.js';
import { type Node, type Units, formatLength, formatShort, node } from '../tree/index.js';
import { table } from '../paper/index.js';

const parts = {
  grid: 'grid',
  shackles: 'shackles',
  slings: 'slings',
  hooks: 'hooks',
  'hoist body': 'hoist',
  bridle: 'bridle',
} as const;

/** Everything between the mark of the trim height and the point of one pick, with each length. */
export function heightsOfPick(hang: HangResult, hole: string, units: Units): Node[] {
  const room = hang.room?.picks.find((each) => each.hole === hole);
  if (!room) return [];
  const pieces = room.pieces.map((each) => `${parts[each.part]} ${length(each.mm, units)}`).join(' + ');
  const point = room.pointHeightMm === null ? '' : `, point at ${formatLength(room.pointHeightMm, units)}`;
  return [
    node(
      'li',
      {},
      `Above the trim mark: ${pieces}; lower hook at ${formatLength(room.hookHeightMm, units)}${point}: `,
      node('span', { class: room.leftMm !== null && room.leftMm < 0 ? 'stop' : '' }, `${headroomText(room, units)}.`),
    ),
  ];
}

const length = (mm: number | null, units: Units): string => (mm === null ? 'not on file' : formatShort(mm, units));

/** Legs of a bridle beside the steel that makes them. */
export function legLengths(hang: HangResult, hole: string, units: Units): Node[] {
  const legs = (hang.room?.legs ?? []).filter((each) => each.hole === hole);
  if (legs.length === 0) return [];
  const made = (each: (typeof legs)[number]) =>
    each.shortestMm === each.longestMm
      ? length(each.longestMm, units)
      : `${length(each.shortestMm, units)} to ${length(each.longestMm, units)}`;
  return [
    table(
      ['Leg', { right: 'Long as drawn' }, 'Steel', { right: 'Makes' }, 'Judged'],
      legs.map((each) => [
        String(each.leg),
        { right: length(each.lengthMm, units) },
        each.models.join(', '),
        { right: made(each) },
        each.fits ? 'fits' : node('span', { class: 'stop' }, '■ does not fit'),
      ]),
    ),
  ];
}
