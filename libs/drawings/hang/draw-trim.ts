import type { HangResult } from '#pack-plan';
import { type Node, type Units, formatLength, node } from '../tree/index.js';

type Room = NonNullable<HangResult['room']>;
interface Trimmed {
  readonly trimHeightMm: number;
  readonly room?: Pick<Room, 'trimTo' | 'markZMm' | 'lowestHeightMm' | 'deckHeightMm'> | null;
}

const marks = { 'bottom edge': 'to the bottom edge', grid: 'to the grid', top: 'to the top of the grid' } as const;

/** Below a drawing: the trim height, what it measures to, and the lowest point. */
export const trimText = (hang: Trimmed, units: Units): string =>
  [`${formatLength(hang.trimHeightMm, units)} trim${hang.room ? ` ${marks[hang.room.trimTo]}` : ''}`, lowestText(hang, units)]
    .filter((each) => each !== null)
    .join(' · ');

/** null in plans made before heights were compared. */
function lowestText({ room }: Trimmed, units: Units): string | null {
  if (!room) return null;
  const aboveMm = room.lowestHeightMm - room.deckHeightMm;
  const below = room.deckHeightMm === 0 ? 'the floor' : `the deck at ${formatLength(room.deckHeightMm, units)}`;
  return `lowest point ${formatLength(Math.abs(aboveMm), units)} ${aboveMm < 0 ? 'BELOW' : 'above'} ${below}`;
}

/** What the chain of a pick has left at trim, or what is missing. */
export function headroomText({ leftMm, pointHeightMm }: Room['picks'][number], units: Units): string {
  if (leftMm === null || pointHeightMm === null) return 'height of the point not on file';
  return leftMm < 0 ? `${formatLength(-leftMm, units)} MISSING` : `${formatLength(leftMm, units)} left`;
}

/** A dashed line at the mark that the trim height is measured to, and the floor or deck where the hang reaches into it. */
export function drawTrim({ trimHeightMm, room }: Trimmed, width: number, y: (zMm: number) => number, units: Units): Node[] {
  if (!room) return [];
  const mark = y(room.markZMm);
  const deckZMm = room.deckHeightMm - trimHeightMm + room.markZMm;
  const deck = y(deckZMm);
  return [
    node('line', { x1: 4, y1: mark, x2: width - 4, y2: mark, class: 'bar', 'data-trim': room.trimTo }),
    node('text', { x: 4, y: mark - 3, class: 'sub' }, `▸ ${formatLength(trimHeightMm, units)}`),
    ...(room.lowestHeightMm < room.deckHeightMm
      ? [
          node('line', { x1: 4, y1: deck, x2: width - 4, y2: deck, class: 'hatchline' }),
          node('text', { x: width - 4, y: deck - 4, class: 'why', 'text-anchor': 'end' }, room.deckHeightMm === 0 ? 'floor' : 'deck'),
        ]
      : []),
  ];
}
