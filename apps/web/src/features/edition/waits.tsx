import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { request } from '../../platform/request.js';
import { Note } from '../../ui/notes.js';
import { howManyWaitQuery, waitsOfItemQuery } from './operations.js';

/** What waits of one thing, as the screens read it. */
export interface Waits {
  readonly id: string;
  readonly kind: string;
  readonly subject: string;
  readonly sentence: string;
  readonly proposedBy: string;
}

/** Lines on the page of a thing: what is proposed of it, and by whom. */
export const WaitLines = ({ waits }: { waits: readonly Waits[] }) =>
  waits.map((each) => (
    <Note key={each.id} weight="look">
      {each.sentence} Proposed by {each.proposedBy}. <Link to="/waiting">What waits</Link>
    </Note>
  ));

/** What waits of an item and of its records. */
export function WaitsOfItem({ id }: { id: string }) {
  const query = useQuery({
    queryKey: ['waits-of-item', id],
    queryFn: async () => (await request(waitsOfItemQuery, { id })).proposalsOfItem,
  });
  return <WaitLines waits={query.data ?? []} />;
}

/** On the page of the day: how much waits for the safety officer. */
export function WaitingToday({ isMine }: { isMine: boolean }) {
  const query = useQuery({ queryKey: ['how-many-wait'], queryFn: async () => (await request(howManyWaitQuery)).proposals.totalCount });
  const count = query.data ?? 0;
  if (count === 0) return null;
  return (
    <Note weight="look">
      {isMine ? 'Waiting for you' : 'Waiting for the safety officer'}: {count === 1 ? '1 proposal' : `${count} proposals`}. What holds until
      then is what was on file before. <Link to="/waiting">Look at what waits</Link>
    </Note>
  );
}

/** After a save: what of it waits, sentence by sentence. */
export function AfterSaving({ waits }: { waits: readonly { readonly id: string; readonly sentence: string }[] }) {
  return (
    <div role="status">
      <p>{waits.length === 0 ? 'Saved.' : 'Saved, but for what waits for the safety officer:'}</p>
      <SaidWaits sentences={waits.map((each) => each.sentence)} count={waits.length} />
    </div>
  );
}

const mostShown = 20;

export function SaidWaits({ sentences, count }: { sentences: readonly string[]; count: number }) {
  const shown = sentences.slice(0, mostShown);
  return (
    <>
      {shown.map((each, at) => (
        <Note key={at} weight="look">
          {each}
        </Note>
      ))}
      {count > shown.length && <p className="quiet">And {count - shown.length} more, on the list of what waits.</p>}
    </>
  );
}
