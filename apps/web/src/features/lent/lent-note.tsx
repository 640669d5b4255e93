import { useQuery } from '@tanstack/react-query';
import { useParams } from 'react-router';
import { lentNote } from '#drawings';
import { today } from '../../platform/today.js';
import { Drawing } from '../../ui/drawing.js';
import { Loaded } from '../../ui/page.js';
import { usePrint } from '../../ui/use-print.js';
import { readLentKit } from './operations.js';

/** Delivery note and return note on paper. */
export function LentNotePrint() {
  const { itemId = '' } = useParams();
  const query = useQuery({ queryKey: ['kit of others'], queryFn: readLentKit });
  usePrint(query.data !== undefined, `${itemId} · note`);
  return (
    <Loaded query={query}>
      {(kit) => {
        const one = kit.find((each) => each.itemId === itemId);
        return one ? <Drawing of={lentNote(one, today())} /> : <p>There is no kit of others called {itemId}.</p>;
      }}
    </Loaded>
  );
}
