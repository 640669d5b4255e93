import { useQuery } from '@tanstack/react-query';
import { useWatch } from 'react-hook-form';
import { type Broken, type Tour, brokenByMove } from '#tour-file';
import { request } from '../../../platform/request.js';
import { day } from '../../../ui/typed.js';
import { dueQuery } from '../../plan/operations.js';
import { useShow } from '../../plan/use-show.js';
import { tourQuery } from '../edit/operations.js';

/** What the days that are typed break, before they are saved. */
export function WhatBreaks({ tour, showId }: { tour: Tour; showId: string }) {
  const [from, to] = useWatch<{ from: string; to: string }, ['from', 'to']>({ name: ['from', 'to'] });
  const plan = useShow(tour.id, showId).data?.inForce;
  const due = useQuery({
    queryKey: ['plan', plan?.id, 'due'],
    queryFn: async () => (await request(dueQuery, { id: plan?.id ?? '' })).plan.due,
    enabled: plan !== undefined && plan !== null,
  });
  const states = useQuery({ queryKey: ['tour', tour.id], queryFn: () => request(tourQuery, { id: tour.id }) });
  const isMoved = tour.shows.some((each) => each.id === showId && (each.from !== from || each.to !== to));
  if (!isMoved || !day.safeParse(from).success || !day.safeParse(to).success) return null;
  const items = (due.data?.items ?? []).flatMap(({ item, dueOn }) => (dueOn === null ? [] : [{ item, lastDay: dueOn }]));
  const broken = brokenByMove(tour, showId, { from, to }, { items, planned: (states.data?.showStates ?? []).map((each) => each.showId) });
  return (
    <div className="why" role="status">
      <p>
        <b>What this move does</b>
        {!plan && ' (what runs out is not known: the show has no plan yet)'}
      </p>
      {broken.length === 0 ? (
        <p>○ It meets no other show and lies within the tour.</p>
      ) : (
        <ul>
          {broken.map((each) => (
            <li key={JSON.stringify(each)}>{said(each)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function said(broken: Broken): string {
  switch (broken.is) {
    case 'no days':
      return '■ The load-out day is before the load-in day.';
    case 'before the tour':
      return `■ It begins before the first prep day of the tour, ${broken.day}.`;
    case 'after the tour':
      return `■ It ends after the last return day of the tour, ${broken.day}.`;
    case 'overlaps':
      return `■ ${broken.show} is on the same days (${broken.from} to ${broken.to}): both want the same kit.`;
    case 'now after':
      return `◐ It comes after ${broken.show}, which it was before.`;
    case 'now before':
      return `◐ It comes before ${broken.show}, which it was after.`;
    case 'no day between':
      return `◐ No day is left between it and ${broken.show}.`;
    case 'runs out':
      return `■ ${broken.item} may be used through ${broken.lastDay}, not through the last day of the show.`;
    case 'plans grow old':
      return `◐ Plans grow old and are made again: ${broken.shows.join(', ')}.`;
  }
}
