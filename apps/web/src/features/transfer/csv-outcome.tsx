import { SaidWaits } from '../edition/waits.js';
import type { CsvImport } from './operations.js';
import { countOf } from '../../platform/written.js';

/** New ones and waiting ones named; the figures count all. */
const mostShown = 8;

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
        {of.dryRun ? 'Would change' : `Imported in ${countOf(of.seconds)} s`}: {countOf(outcome.added)} new, {countOf(outcome.changed)}{' '}
        changed, {countOf(outcome.unchanged)} as they are.
      </p>
      <ul>
        {outcome.firstAdded.slice(0, mostShown).map((id) => (
          <li key={id}>
            new: <span className="mono">{id}</span>
          </li>
        ))}
        {outcome.added > mostShown && <li>and {countOf(outcome.added - mostShown)} more new</li>}
        {outcome.firstChanged.map((each) => (
          <li key={each.id}>
            <span className="mono">{each.id}</span>: {each.what}
          </li>
        ))}
        {outcome.changed > outcome.firstChanged.length && (
          <li>and {countOf(outcome.changed - outcome.firstChanged.length)} more changed</li>
        )}
      </ul>
      <SaidWaits sentences={outcome.firstWaiting.slice(0, mostShown)} count={outcome.waiting} />
    </div>
  );
}

/** Faults that want the same stand together, with their number and the first rows. */
const Refusal = ({ outcome }: { outcome: NonNullable<CsvImport['outcome']> }) => (
  <div className="faults" role="alert">
    <p>
      <b>stop</b> Nothing was imported: {countOf(outcome.faulty)} {outcome.faulty === 1 ? 'fault' : 'faults'} in {countOf(outcome.rows)}{' '}
      rows.
    </p>
    <ul>
      {outcome.faults.map((each) => (
        <li key={`${each.column} ${each.wanted}`}>
          {countOf(each.count)} × {each.column || 'the file'}: wanted {each.wanted}
          <ul>
            {each.first.map(({ row, value }) => (
              <li key={row}>
                row {row}: {value === '' ? 'empty' : <code>{value}</code>}
              </li>
            ))}
            {each.count > each.first.length && <li>and {countOf(each.count - each.first.length)} more rows</li>}
          </ul>
        </li>
      ))}
    </ul>
  </div>
);

const failed: Readonly<Record<string, string>> = {
  'house-stopped': 'The house was stopped while this file came in. Nothing of it was saved; send it again.',
  fault: 'Something went wrong here, not with the file. Nothing of it was saved; the log of the house says what it was.',
};
