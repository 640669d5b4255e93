import { Link } from 'react-router';
import type { LastSeen } from '#pack-plan';
import { momentOf } from '../../../platform/written.js';
import { Faults } from '../../../ui/faults.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { useReturn } from './use-return.js';

const rowWords = { in: 'loaded in', off: 'taken off', 'in for home': 'loaded for home in' } as const;

/** Where it was seen last. */
function placeWords({ place, with: cart }: LastSeen): string {
  const on = cart === null ? '' : `with ${cart}`;
  if (place.code === 'row') return `${on && `${on}, `}${rowWords[place.way]} ${place.truck}, row ${place.row}`;
  return on || place.sentence.replace(/\.$/, '');
}

/** What is not back, with where it was seen last and by whom. */
export function Missing(given: OnFloor) {
  const { pieces, isError, error } = useReturn(given);
  const open = (pieces ?? []).filter((each) => !each.back);
  return (
    <FloorPage
      name="Not back yet"
      title={`Not back yet: ${open.length}`}
      back={`${given.home}/return`}
      foot={
        <Link className="btn big" to={`${given.home}/return`}>
          Scan more in
        </Link>
      }
    >
      {isError && !pieces && <Faults of={error} />}
      {!pieces && !isError && <p className="quiet">Reading ...</p>}
      {pieces && open.length === 0 && (
        <div className="answer" role="status">
          ○ Everything that travelled is back. Pieces of batches are counted.
        </div>
      )}
      <ul className="plain">
        {open.map(({ id, model, load, seen }) => (
          <li key={id} className="job">
            <b className="mono">{id}</b>
            <span>
              {model}
              {load && `, ${load}`}
              <br />
              {seen ? `Last: ${placeWords(seen)}, ${seen.by}, ${momentOf(seen.moment)}.` : 'Nobody put on record where it was.'}
            </span>
          </li>
        ))}
      </ul>
    </FloorPage>
  );
}
