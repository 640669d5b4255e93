import type { Column, Match } from '#tour-file';
import { scrollsWide } from '../../ui/scrolls.js';

/** The columns of a sheet with its first rows, each matched to one of ours or passed over. */
export function Columns({
  records,
  headingAt,
  match,
  columns,
  onMatch,
}: {
  records: readonly (readonly string[])[];
  headingAt: number;
  match: Match;
  columns: readonly Column[];
  onMatch: (match: Match) => void;
}) {
  const heading = records[headingAt] ?? [];
  const first = records.slice(headingAt + 1).filter((record) => record.some((cell) => cell.trim() !== ''));
  const choose = (at: number, ours: string) =>
    onMatch(heading.map((_, other) => (other === at ? ours || null : match[other] === ours ? null : (match[other] ?? null))));
  return (
    <div {...scrollsWide}>
      <table className="tight">
        <thead>
          <tr>
            {heading.map((cell, at) => (
              <th key={at} scope="col">
                {cell || `column ${at + 1}`}
                <br />
                <select
                  aria-label={`What ${cell || `column ${at + 1}`} is`}
                  value={match[at] ?? ''}
                  onChange={(event) => choose(at, event.target.value)}
                >
                  <option value="">not read</option>
                  {columns.map((each) => (
                    <option key={each.heading} value={each.heading}>
                      {each.heading}
                    </option>
                  ))}
                </select>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {first.slice(0, rowsShown).map((record, row) => (
            <tr key={row}>
              {heading.map((_, at) => (
                <td key={at} className={(match[at] ?? null) === null ? 'quiet' : undefined}>
                  {record[at] ?? ''}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {first.length > rowsShown && <p className="quiet">and {first.length - rowsShown} more rows</p>}
    </div>
  );
}

const rowsShown = 4;

/** "12 of 14 columns are read; not read: note, price." */
export function columnsSaid(heading: readonly string[], match: Match): string {
  const out = heading.filter((cell, at) => (match[at] ?? null) === null && cell.trim() !== '');
  const read = match.filter((each) => each !== null).length;
  return `${read} of ${read + out.length} columns are read${out.length > 0 ? `; not read: ${out.slice(0, 6).join(', ')}${out.length > 6 ? ' ...' : ''}` : ''}`;
}
