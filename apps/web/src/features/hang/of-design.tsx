import { Link } from 'react-router';
import { type Design, type Hang, type Show, type Tour, changeDesign, differences } from '#tour-file';
import { today } from '../../platform/today.js';
import { fieldWord } from './form/field-words.js';

const list = (fields: readonly (keyof Hang)[]): string => fields.map(fieldWord).join(', ');

/** A show that follows a design: what differs here, and the way back to the design. */
export function FromDesign({ tour, show, hangs, onTake }: { tour: Tour; show: Show; hangs: Hang[]; onTake: (hangs: Hang[]) => void }) {
  const design = tour.designs?.find((each) => each.id === show.design);
  if (!design) return null;
  const differs = differences({ hangs }, design);
  return (
    <div className="why">
      <p>
        This show follows the design <Link to={`/tours/${tour.id}/designs/${design.id}`}>{design.name}</Link>. What you change here differs
        at this show alone.
      </p>
      {differs.length === 0 ? (
        <p>○ Everything hangs here as in the design.</p>
      ) : (
        <>
          <ul>
            {differs.map((each) => (
              <li key={each.hang}>
                ◐ {each.name}:{' '}
                {each.how === 'changed'
                  ? `${list(each.fields)} of its own`
                  : each.how === 'added'
                    ? 'at this show alone'
                    : 'not at this show'}
              </li>
            ))}
          </ul>
          <button type="button" className="plain small" onClick={() => onTake(structuredClone(design.hangs))}>
            Hang everything as in the design
          </button>
        </>
      )}
    </div>
  );
}

/** The shows that a design is flown at, and what becomes of each when these hangs are saved. */
export function WhereFlown({ tour, design, hangs }: { tour: Tour; design: Design; hangs: Hang[] }) {
  const using = tour.shows.filter((each) => each.design === design.id);
  const { followed, over } = changeDesign(tour, design.id, hangs, today());
  if (using.length === 0) return <p>No show follows this design yet.</p>;
  return (
    <div className="why">
      <p>
        Flown at {using.length} {using.length === 1 ? 'show' : 'shows'}: {using.map((each) => each.name).join(', ')}. What is saved here
        changes them all, but for what differs there.
      </p>
      <ul>
        {followed
          .filter((each) => each.kept.length > 0)
          .map((each) => (
            <li key={each.show}>
              ◐ {each.name} keeps its own:{' '}
              {each.kept.map(({ hang, field }) => (field ? `${fieldWord(field)} of ${hang}` : hang)).join(', ')}
            </li>
          ))}
        {over.map((each) => (
          <li key={each.id}>○ {each.name} is over and stays as it hung.</li>
        ))}
      </ul>
    </div>
  );
}
