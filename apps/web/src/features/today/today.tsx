import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { WaitingToday } from '../edition/waits.js';
import { More } from '../../ui/more.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { quietWords } from './quiet-words.js';

const attentionQuery = graphql(`
  query Attention($role: String!, $after: String) {
    attention(role: $role, first: 30, after: $after) {
      totalCount showCount plannedCount
      pageInfo { hasNextPage endCursor }
      edges { node { weight code subject date sentence tourId showId show itemId } }
    }
  }
`);
const anyTourQuery = graphql(`query AnyTour { tours(first: 1) { edges { node { id } } } items(first: 1) { edges { node { id } } } }`);

const titles: Record<string, string> = { warehouse: 'Warehouse', system: 'System', safety: 'Safety officer' };
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
          onFile={tours.data && { hasTours: tours.data.tours.edges.length > 0, hasItems: tours.data.items.edges.length > 0 }}
        />
      ))}
    </Page>
  );
}

type NotesGiven = { role: string; isMine: boolean; number: number; onFile: { hasTours: boolean; hasItems: boolean } | undefined };

function NotesOf({ role, isMine, number, onFile }: NotesGiven) {
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
        {({ pages }) => (
          <>
            {role === 'safety' && <WaitingToday isMine={isMine} />}
            {notes.length === 0 && onFile && <p className="quiet">{quietWords(role, { ...onFile, ...judgedIn(pages[0]) })}</p>}
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

const judgedIn = (page: { readonly showCount: number; readonly plannedCount: number } | undefined) => ({
  shows: page?.showCount ?? 0,
  planned: page?.plannedCount ?? 0,
});
