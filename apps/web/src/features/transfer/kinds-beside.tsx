import { useState } from 'react';
import type { Person } from '../../platform/person.js';

const wordOf = (kind: string): string => {
  const [of, name] = kind.split('/');
  return of === 'models' ? `models: ${name}` : of === 'items' ? `items: ${name}` : kind;
};

/** The kinds of rows, by word. */
export const KindOptions = ({ kinds }: { kinds: readonly string[] }) => (
  <>
    {kinds.map((each) => (
      <option key={each} value={each}>
        {wordOf(each)}
      </option>
    ))}
  </>
);

/** An example of each kind, and what is on file of it. */
export function KindsBeside({ me, kinds }: { me: Person; kinds: readonly string[] }) {
  const [kind, setKind] = useState(kinds[0] ?? '');
  return (
    <>
      <label>
        Kind
        <select value={kind} onChange={(event) => setKind(event.target.value)}>
          <KindOptions kinds={kinds} />
        </select>
      </label>
      <p>
        <a className="btn plain" href={`/api/csv/${kind}/example`}>
          Example file
        </a>
      </p>
      <p>
        <a className="btn plain" href={`/api/csv/${kind}`}>
          Everything of this kind as CSV
        </a>
      </p>
      <p className="note">
        The kind of a sheet is told by what the file is called (“hoists.csv”) and by its headings, and can be chosen. Rows of one sheet come
        in together, or none does.
      </p>
      {kinds.includes('examinations') && (
        <p className="note">
          Of examinations one row is one of one item or batch. What failed counts at once; what passed{' '}
          {me.role === 'safety' ? 'counts, as you record it yourself' : 'waits for the safety officer'}. Known by serial, day, check and
          number of the report.
        </p>
      )}
      <p>Up to 100,000 rows in one sheet, 20 MB.</p>
    </>
  );
}
