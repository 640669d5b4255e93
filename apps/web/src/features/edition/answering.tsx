import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { request } from '../../platform/request.js';
import { answeringQuery } from './operations.js';

const lookEveryMs = 1_000;

/** An answer to all that waited, on its way in portions or just over. */
export function Answering() {
  const client = useQueryClient();
  const query = useQuery({
    queryKey: ['answering'],
    queryFn: async () => (await request(answeringQuery)).latestProposalAnswering ?? null,
    refetchInterval: ({ state }) => (state.data?.isGoing ? lookEveryMs : false),
  });
  const one = query.data;
  const going = useRef<string | null>(null);
  useEffect(() => {
    if (one?.isGoing) going.current = one.id;
    else if (one && going.current === one.id) {
      going.current = null;
      void client.invalidateQueries({ queryKey: ['proposals'] });
    }
  }, [one, client]);
  if (!one || (!one.isGoing && one.leftBecause.length === 0)) return null;
  const verb = one.accept ? 'accept' : 'declin';
  return (
    <div className="notice" role="status">
      {one.isGoing ? (
        <>
          <p>
            All {one.total} that waited are being {verb}ed, signed by {one.askedBy}: {one.reason}. {one.looked} are done after {one.seconds}{' '}
            s. You may leave this page; it goes on.
          </p>
          <progress max={one.total} value={one.looked} aria-label="Answered" />
        </>
      ) : (
        <>
          <p>
            {one.answered} of {one.total} were {verb}ed, signed by {one.askedBy}: {one.reason}. The others stay as they were:
          </p>
          <ul>
            {one.leftBecause.map((why) => (
              <li key={why}>{why}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}
