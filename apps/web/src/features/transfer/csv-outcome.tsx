import { SaidWaits } from '../edition/waits.js';
import type { CsvImport } from './operations.js';

/** How a file ended: what came in, or why nothing did. */
export function CsvOutcome({ of }: { of: CsvImport }) {
  const { outcome } = of;
  if (of.state === 'cancelled') return <p role="status">Cancelled. Nothing was saved.</p>;
  if (of.state === 'failed') return <p role="alert">{failed[of.code ?? ''] ?? failed['fault']}</p>;
  if (!outcome) return null;
  if (of.state === 'refused') return <Refusal outcome={outcome} />;
  return (
    <div role="status">
      <p>
        {of.dryRun ? 'Would change' : `Imported in ${of.seconds.toLocaleString()} s`}: {outcome.added.toLocaleString()} new,{' '}
        {outcome.changed.toLocaleString()} changed, {outcome.unchanged.toLocaleString()} as they are.
      </p>
      <ul>
        {outcome.firstAdded.map((id) => (
          <li key={id}>
            new: <span className="mono">{id}</span>
          </li>
        ))}
        {outcome.added > outcome.firstAdded.length && <li>and {(outcome.added - outcome.firstAdded.length).toLocaleString()} more new</li>}
        {outcome.firstChanged.map((each) => (
          <li key={each.id}>
            <span className="mono">{each.id}</span>: {each.what}
          </li>
        ))}
        {outcome.changed > outcome.firstChanged.length && (
          <li>and {(outcome.changed - outcome.firstChanged.length).toLocaleString()} more changed</li>
        )}
      </ul>
      <SaidWaits sentences={outcome.firstWaiting} count={outcome.waiting} />
    </div>
  );
}

/** Faults that want the same stand together, with their number and the first rows. */
const Refusal = ({ outcome }: { outcome: NonNullable<CsvImport['outcome']> }) => (
  <div className="faults" role="alert">
    <p>
      <b>stop</b> Nothing was imported: {outcome.faulty.toLocaleString()} {outcome.faulty === 1 ? 'fault' : 'faults'} in{' '}
      {outcome.rows.toLocaleString()} rows.
    </p>
    <div className="wide">
      <table className="tight">
        <thead>
          <tr>
            <th scope="col">Column</th>
            <th scope="col">Wanted</th>
            <th scope="col" className="num">
              Faults
            </th>
            <th scope="col">First rows</th>
          </tr>
        </thead>
        <tbody>
          {outcome.faults.map((each) => (
            <tr key={`${each.column} ${each.wanted}`}>
              <td>{each.column || 'the file'}</td>
              <td>{each.wanted}</td>
              <td className="num">{each.count.toLocaleString()}</td>
              <td>
                {each.first.map(({ row, value }) => (
                  <div key={row}>
                    row {row}: {value === '' ? 'empty' : <code>{value}</code>}
                  </div>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  </div>
);

const failed: Readonly<Record<string, string>> = {
  'house-stopped': 'The house was stopped while this file came in. Nothing of it was saved; send it again.',
  fault: 'Something went wrong here, not with the file. Nothing of it was saved; the log of the house says what it was.',
};
