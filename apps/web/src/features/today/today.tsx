import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { WaitingToday } from '../edition/waits.js';
import { More } from '../../ui/more.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';

const attentionQuery = graphql(`
  query Attention($role: String!, $after: String) {
    attention(role: $role, first: 30, after: $after) {
      totalCount
      pageInfo { hasNextPage endCursor }
      edges { node { weight code subject date sentence tourId showId show itemId } }
    }
  }
`);
const anyTourQuery = graphql(`query AnyTour { tours(first: 1) { edges { node { id } } } items(first: 1) { edges { node { id } } } }`);

const titles: Record<string, string> = { warehouse: 'Warehouse', system: 'System', safety: 'Safety officer' };
const quietSentence: Record<string, string> = {
  warehouse: 'Nothing to prepare that is not prepared.',
  system: 'Every show has its released plan.',
  safety: 'Everything that lifts is in date for the tours on file.',
};

/** Where there is nothing, nothing is in order: that is said instead. */
function quietWords(role: string, hasTours: boolean, hasItems: boolean): string {
  if (!hasTours && role !== 'safety') return 'Nothing is on file: there is no tour, and no show to prepare or to plan.';
  if (!hasItems && role === 'safety') return 'Nothing is on file: there is no item whose examinations could run out.';
  if (!hasTours) return 'Nothing was compared: no tour is on file, so no day on which anything has to be in date.';
  return quietSentence[role] ?? '';
}

/** What needs attention today, own role first. */
export function Today({ me }: { me: Person }) {
  const tours = useQuery({ queryKey: ['any-tour'], queryFn: () => request(anyTourQuery) });
  const roles = [me.role, ...['warehouse', 'system', 'safety'].filter((each) => each !== me.role)];
  return (
    <Page title="Today" lede="What needs eyes, for each of the three. The fact first, the remedy second.">
      {tours.data?.tours.edges.length === 0 && (
        <p>
          There is no tour yet. <Link to="/begin">What a first plan needs, in order</Link>; or <Link to="/import">import a tour file</Link>.
        </p>
      )}
      {roles.map((role, index) => (
        <NotesOf
          key={role}
          role={role}
          isMine={role === me.role}
          number={index + 1}
          quiet={tours.data && quietWords(role, tours.data.tours.edges.length > 0, tours.data.items.edges.length > 0)}
        />
      ))}
    </Page>
  );
}

function NotesOf({ role, isMine, number, quiet }: { role: string; isMine: boolean; number: number; quiet: string | undefined }) {
  const query = useInfiniteQuery({
    queryKey: ['attention', role],
    queryFn: async ({ pageParam }) => (await request(attentionQuery, { role, after: pageParam })).attention,
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
  });
  const notes = query.data?.pages.flatMap((page) => page.edges.map((edge) => edge.node)) ?? [];
  const shows = [...new Map(notes.map((each) => [`${each.tourId}/${each.showId}`, each])).values()];
  return (
    <Part
      number={number}
      title={titles[role]!}
      margin={shows.map((each) => (
        <p key={`${each.tourId}/${each.showId}`}>
          <Link to={`/tours/${each.tourId}/shows/${each.showId}`}>Open {each.show}</Link>, or{' '}
          <Link to={`/floor/${each.tourId}/${each.showId}`}>its floor</Link>
        </p>
      ))}
    >
      <Loaded query={query}>
        {() => (
          <>
            {role === 'safety' && <WaitingToday isMine={isMine} />}
            {notes.length === 0 && <p className="quiet">{quiet}</p>}
            {notes.map((note, at) => (
              <Note key={at} weight={note.weight as 'look'}>
                {note.sentence}{' '}
                {note.code === 'barred-in-the-air' && (
                  <Link to={`/print/${note.tourId}/${note.showId}/hangs-with`} target="_blank">
                    What hangs with it
                  </Link>
                )}{' '}
                {note.itemId && <Link to={`/register/${encodeURIComponent(note.itemId)}`}>Look at {note.itemId}</Link>}
              </Note>
            ))}
            <More of={query} />
          </>
        )}
      </Loaded>
    </Part>
  );
}
