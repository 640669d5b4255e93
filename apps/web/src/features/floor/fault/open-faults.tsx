import { useQuery } from '@tanstack/react-query';
import { request } from '../../../platform/request.js';
import { momentOf } from '../../../platform/written.js';
import { Note } from '../../../ui/notes.js';
import { openFaultsQuery } from './operations.js';

/** Faults with which boxes fly on, so that whoever stands at the cart knows of them. */
export function OpenFaults({ planId, boxes }: { planId: string; boxes: readonly string[] }) {
  const query = useQuery({
    queryKey: ['open faults', planId],
    queryFn: async () => (await request(openFaultsQuery, { planId })).openFaults,
  });
  return (query.data ?? [])
    .filter((each) => boxes.includes(each.item))
    .map((each) => (
      <Note key={`${each.item} ${each.moment}`} weight="look">
        {each.item}, {each.kind}: {each.what}. {each.then === 'bottom' ? 'It flies at the bottom of a hang.' : 'It flies meanwhile.'}{' '}
        {each.by}, {momentOf(each.moment)}.
      </Note>
    ));
}
