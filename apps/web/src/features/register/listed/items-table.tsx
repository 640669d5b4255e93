import { Link } from 'react-router';
import { SortHead } from '../../../ui/list/sort-head.js';
import type { ItemLine } from './items-asked.js';
import type { Selected } from './selected.js';
import { scrolls } from '../../../ui/scrolls.js';

const columns = [
  ['serial', 'Serial'],
  ['state', 'State'],
  ['last day', 'Last day of use'],
  ['kind', 'Kind'],
  ['model', 'Model'],
  ['depot', 'Depot'],
] as const;

export function ItemsTable({
  rows,
  sort,
  put,
  selected,
  pick,
}: { rows: readonly ItemLine[]; sort: string; put: (sort: string) => void } & Pick<Selected, 'selected' | 'pick'>) {
  const isAll = rows.length > 0 && rows.every((each) => selected.has(each.id));
  return (
    <div {...scrolls}>
      <table>
        <thead>
          <tr>
            <th className="tickbox">
              <input
                type="checkbox"
                aria-label="Select all that are shown"
                checked={isAll}
                onChange={(event) => pick(rows, event.target.checked)}
              />
            </th>
            {columns.map(([by, title]) => (
              <SortHead key={by} by={by} title={title} sort={sort || 'serial'} put={put} />
            ))}
            <th>Where</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((each) => (
            <tr key={each.id}>
              <td className="tickbox">
                <input
                  type="checkbox"
                  aria-label={`Select ${each.id}`}
                  checked={selected.has(each.id)}
                  onChange={(event) => pick([each], event.target.checked)}
                />
              </td>
              <td className="mono">
                <Link to={`/register/${encodeURIComponent(each.id)}`}>{each.id}</Link>
              </td>
              <td>
                {each.state === 'in service' ? '○' : '■'} {each.state}
              </td>
              <td>{each.dueState === null ? '' : (each.dueOn ?? each.dueState)}</td>
              <td>
                {each.kind}
                {each.count !== null ? ` × ${each.count}` : ''}
              </td>
              <td>{each.model}</td>
              <td>{each.depot}</td>
              <td>{each.place === each.depot ? '' : each.place.replace(`${each.depot}, `, '')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
