import { useQuery } from '@tanstack/react-query';
import { request } from '../../platform/request.js';
import { countOf, momentOf } from '../../platform/written.js';
import { latestCsvImportsQuery } from './operations.js';
import { scrollsWide } from '../../ui/scrolls.js';

/** What came in lately, by whomever; each can be looked at. */
export function LatestImports({ followed, onFollow }: { followed: string | null; onFollow: (id: string) => void }) {
  const query = useQuery({ queryKey: ['imports'], queryFn: async () => (await request(latestCsvImportsQuery)).latestCsvImports });
  const imports = query.data ?? [];
  if (imports.length === 0) return null;
  return (
    <details>
      <summary>The newest {imports.length === 1 ? 'file' : `${imports.length} files`}</summary>
      <div {...scrollsWide}>
        <table className="tight">
          <thead>
            <tr>
              <th scope="col">Sent</th>
              <th scope="col">By</th>
              <th scope="col">Kind</th>
              <th scope="col" className="num">
                Rows
              </th>
              <th scope="col">State</th>
              <th scope="col">
                <span className="away">Look</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {imports.map((each) => (
              <tr key={each.id}>
                <td>{momentOf(each.askedAt as string)}</td>
                <td>{each.askedBy}</td>
                <td>{each.of.replace('/', ': ')}</td>
                <td className="num">{countOf(each.rowsTotal)}</td>
                <td>
                  {each.state}
                  {each.dryRun && ', shown only'}
                </td>
                <td>
                  {each.id !== followed && (
                    <button type="button" className="plain" onClick={() => onFollow(each.id)}>
                      Look
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
