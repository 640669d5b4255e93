import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { Loaded } from '../../ui/page.js';
import { deviceName } from './device-name.js';

const sessionsQuery = graphql(`query Sessions { sessions { id openedAt seenAt address device isThis } }`);
const endMutation = graphql(`mutation EndSessions($id: ID) { endSessions(id: $id) }`);

/** Devices on which the person is signed in, each of which can be signed out from here. */
export function Sessions() {
  const client = useQueryClient();
  const query = useQuery({ queryKey: ['sessions'], queryFn: () => request(sessionsQuery) });
  const end = useMutation({
    mutationFn: (id: string | null) => request(endMutation, { id }),
    onSuccess: () => client.invalidateQueries({ queryKey: ['sessions'] }),
  });
  return (
    <Loaded query={query}>
      {({ sessions }) => (
        <>
          <ul className="plain">
            {sessions.map((each) => (
              <li key={each.id} className="record">
                <p>
                  {each.isThis ? 'This device' : deviceName(each.device)}, from{' '}
                  {each.address ? `the address ${each.address}` : 'an address not noted'}
                </p>
                <p className="quiet">
                  Since {momentOf(String(each.openedAt))}, last used {momentOf(String(each.seenAt))}
                </p>
                {!each.isThis && (
                  <button type="button" className="plain small" disabled={end.isPending} onClick={() => end.mutate(each.id)}>
                    Sign this one out
                  </button>
                )}
              </li>
            ))}
          </ul>
          {sessions.length > 1 && (
            <button type="button" className="plain" disabled={end.isPending} onClick={() => end.mutate(null)}>
              Sign out everywhere else
            </button>
          )}
          <Faults of={end.error} />
        </>
      )}
    </Loaded>
  );
}
