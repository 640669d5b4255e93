import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { request } from '../../platform/request.js';
import { dayOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { Loaded } from '../../ui/page.js';
import { ownCalendarsQuery, renewCalendar, withdrawCalendar } from './operations.js';

/** The secret address of one's own calendar: told once, renewed and withdrawn. */
export function OwnCalendar({ depots }: { depots: readonly string[] }) {
  const [depot, setDepot] = useState('');
  const client = useQueryClient();
  const query = useQuery({ queryKey: ['own-calendars'], queryFn: async () => (await request(ownCalendarsQuery)).ownCalendars });
  const onSuccess = () => client.invalidateQueries({ queryKey: ['own-calendars'] });
  const renew = useMutation({ mutationFn: async () => (await request(renewCalendar, { depot: depot || null })).renewCalendar, onSuccess });
  const withdraw = useMutation({
    mutationFn: (id: string) => request(withdrawCalendar, { id }),
    onSuccess: async () => {
      renew.reset();
      await onSuccess();
    },
  });
  const address = renew.data === undefined ? undefined : `${location.origin}/api/calendar/${renew.data}/examinations`;
  return (
    <>
      <p>
        Visits, last days of use and incidents to answer, in your own calendar program. Whoever has the address reads it without signing in:
        keep it to yourself.
      </p>
      <Loaded query={query}>
        {(own) => (
          <>
            {own.map((each) => (
              <p key={each.id}>
                Made on {dayOf(each.madeAt)}, {each.depot ?? 'all depots'}.{' '}
                <button type="button" className="plain small" disabled={withdraw.isPending} onClick={() => withdraw.mutate(each.id)}>
                  Withdraw it
                </button>
              </p>
            ))}
            <div className="fields noprint">
              <label>
                What is kept at
                <select value={depot} onChange={(event) => setDepot(event.target.value)}>
                  <option value="">all depots</option>
                  {depots.map((each) => (
                    <option key={each}>{each}</option>
                  ))}
                </select>
              </label>
              <button type="button" disabled={renew.isPending} onClick={() => renew.mutate()}>
                {own.length === 0 ? 'Make an address' : 'Make a new address, and withdraw the old'}
              </button>
            </div>
          </>
        )}
      </Loaded>
      {address !== undefined && <NewAddress of={address} />}
      <Faults of={renew.error ?? withdraw.error} />
    </>
  );
}

const NewAddress = ({ of: address }: { of: string }) => (
  <div role="status">
    <p>Shown this once. For a calendar program, and as rows for a spreadsheet:</p>
    <p>
      <code className="address">{address}.ics</code>
    </p>
    <p>
      <code className="address">{address}.csv</code>
    </p>
  </div>
);
