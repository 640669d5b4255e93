import { Link } from 'react-router';
import type { Person } from '../../../platform/person.js';
import { ChangeMany } from './change-many.js';
import { type Selected, mostSelected } from './selected.js';

/** What can be done with all that are selected. */
export function Selection({ of: { selected, pick, clear }, me }: { of: Selected; me: Person }) {
  if (selected.size === 0) return null;
  const serials = new URLSearchParams([...selected.keys()].map((id) => ['serial', id]));
  return (
    <div className="selection" role="group" aria-label="Selected">
      <p className="row">
        <b role="status">{selected.size === 1 ? '1 item selected' : `${selected.size} items selected`}</b>
        {selected.size >= mostSelected && <span className="quiet">No more than {mostSelected} at once.</span>}
        <Link to={`/labels?${serials}`}>Labels for the selected</Link>
        <a href={`/api/csv/register?${serials}`}>The selected as CSV</a>
        <button type="button" className="plain" onClick={clear}>
          Select none
        </button>
      </p>
      <details>
        <summary>Change the selected</summary>
        <ChangeMany selected={selected} pick={pick} me={me} />
      </details>
    </div>
  );
}
