import { dayNumber, eachDay } from '#kernel';
import type { DueResult } from '#pack-plan';
import { round } from '../hang/index.js';
import { type Node, node } from '../tree/index.js';

const left = 210;
const width = 900;
const row = 28;

/** A line for each item over the tour: how long it may be used; show days shaded, the day it runs out cut off. */
export function drawDue(due: DueResult, most = 40): Node {
  const days = eachDay(due.from, due.to);
  const step = (width - left - 20) / days.length;
  const x = (day: string) => left + (dayNumber(day) - dayNumber(due.from)) * step;
  const shown = due.items.slice(0, most);
  const height = 34 + shown.length * row + 8;
  const every = Math.max(1, Math.ceil(days.length / 16));
  return node(
    'svg',
    {
      viewBox: `0 0 ${width} ${height}`,
      class: 'draw',
      role: 'img',
      'aria-label': `Dates of ${shown.length} lifting items from ${due.from} to ${due.to}`,
    },
    ...due.showDays
      .filter((day) => day >= due.from && day <= due.to)
      .map((day) => node('rect', { x: round(x(day)), y: 22, width: round(step), height: height - 26, class: 'showday' })),
    ...days
      .filter((_, index) => index % every === 0)
      .flatMap((day) => [
        node('line', { x1: round(x(day)), y1: 22, x2: round(x(day)), y2: height - 4, class: 'tick' }),
        node('text', { x: round(x(day) + 3), y: 15, class: 'sub' }, day.slice(5)),
      ]),
    ...shown.flatMap((item, index) => {
      const y = 34 + index * row + 12;
      const name = node('text', { x: 0, y: y + 5, class: 'mono small' }, item.item.length > 24 ? `${item.item.slice(0, 23)}…` : item.item);
      if (item.dueOn === null || item.state === 'overdue')
        return [name, node('text', { x: left + 6, y: y + 5, class: 'why' }, `${item.state}: cannot be planned in`)];
      const end = item.dueOn >= due.to ? width - 20 : x(item.dueOn) + step;
      return [
        name,
        node('line', { x1: left, y1: y, x2: round(end), y2: y, class: 'life' }),
        ...(item.state === 'falls due'
          ? [
              node('path', { d: `M${round(end)},${y - 9} v18`, class: 'cut' }),
              node('text', { x: Math.min(round(end) + 8, width - 130), y: y + 5, class: 'why' }, `due ${item.dueOn}`),
            ]
          : []),
      ];
    }),
  );
}
