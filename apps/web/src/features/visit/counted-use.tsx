import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { request } from '../../platform/request.js';
import { Loaded, Part } from '../../ui/page.js';
import { countedQuery } from './operations.js';
import { scrolls } from '../../ui/scrolls.js';

/** What rules count by lifts or hours instead of days: how far each item is. */
export function CountedUse({ number, depot }: { number: number; depot: string }) {
  const query = useQuery({
    queryKey: ['counted-use', depot],
    queryFn: async () => (await request(countedQuery, { depot: depot || null })).countedUse,
  });
  return (
    <Part number={number} title="Due by count">
      <Loaded query={query}>
        {(all) =>
          all.length === 0 ? (
            <p className="quiet">Nothing that was lifted here is counted by a rule on file.</p>
          ) : (
            <>
              <p className="quiet">
                One lift for each inspection after assembly that was signed here, since the last passed record. Lifts elsewhere, and hours,
                nobody tells your company; batches are in no hang by piece.
              </p>
              <div {...scrolls}>
                <table>
                  <thead>
                    <tr>
                      <th>Item</th>
                      <th>What</th>
                      <th>Depot</th>
                      <th>Rule of</th>
                      <th className="num">Counted</th>
                      <th className="num">Due after</th>
                      <th>Since</th>
                      <th>State</th>
                    </tr>
                  </thead>
                  <tbody>
                    {all.map((each) => (
                      <tr key={`${each.itemId} ${each.jurisdiction} ${each.basis}`}>
                        <td className="mono">
                          <Link to={`/register/${encodeURIComponent(each.itemId)}`}>{each.itemId}</Link>
                        </td>
                        <td>
                          {each.kind}, {each.model}
                        </td>
                        <td>{each.depot}</td>
                        <td>{each.jurisdiction}</td>
                        <td className="num">{each.count ?? 'not counted'}</td>
                        <td className="num">
                          {each.every} {each.basis}
                        </td>
                        <td className="mono">{each.since ?? 'the start'}</td>
                        <td>{each.isDue ? '■ due' : each.count === null ? '◐ not judged here' : '○ not yet'}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </div>
            </>
          )
        }
      </Loaded>
    </Part>
  );
}
