import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';

const attentionQuery = graphql(`
  query Attention {
    attention { role weight code subject date sentence tourId showId itemId }
    tours { id name prepFrom returnTo shows }
  }
`);

const titles: Record<string, string> = { warehouse: 'Warehouse', system: 'System', safety: 'Safety officer' };
const quietSentence: Record<string, string> = {
  warehouse: 'Nothing to prepare that is not prepared.',
  system: 'Every show has its released plan.',
  safety: 'Everything that lifts is in date for the tours on file.',
};

/** What needs attention today, own role first. */
export function Today({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['attention'], queryFn: () => request(attentionQuery) });
  const roles = [me.role, ...['warehouse', 'system', 'safety'].filter((each) => each !== me.role)];
  return (
    <Page title="Today" lede="What needs eyes, for each of the three. The fact first, the remedy second.">
      <Loaded query={query}>
        {({ attention, tours }) => (
          <>
            {tours.length === 0 && (
              <p>
                There is no tour yet. <Link to="/import">Import a tour file</Link> or <Link to="/tours">make one</Link>.
              </p>
            )}
            {roles.map((role, index) => {
              const notes = attention.filter((each) => each.role === role);
              const shows = [
                ...new Map(notes.filter((each) => each.showId).map((each) => [`${each.tourId}/${each.showId}`, each])).values(),
              ];
              return (
                <Part
                  key={role}
                  number={index + 1}
                  title={titles[role]!}
                  margin={shows.map((each) => (
                    <p key={each.showId}>
                      <Link to={`/tours/${each.tourId}/shows/${each.showId}`}>Open {showName(attention, each.showId)}</Link>
                    </p>
                  ))}
                >
                  {notes.length === 0 && <p className="quiet">{quietSentence[role]}</p>}
                  {notes.map((note, at) => (
                    <Note key={at} weight={note.weight as 'look'}>
                      {note.sentence}{' '}
                      {note.itemId && <Link to={`/register/${encodeURIComponent(note.itemId)}`}>Look at {note.itemId}</Link>}
                    </Note>
                  ))}
                </Part>
              );
            })}
          </>
        )}
      </Loaded>
    </Page>
  );
}

/** The show's name stands in the notes that are about the show itself. */
function showName(notes: readonly { showId?: string | null; code: string; subject: string }[], showId: string | null | undefined): string {
  const own = notes.find((each) => each.showId === showId && ['no-plan', 'not-released', 'stale', 'carts-to-confirm'].includes(each.code));
  return own?.subject ?? showId ?? '';
}
