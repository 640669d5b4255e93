import { Link } from 'react-router';
import { SaidWaits } from '../edition/waits.js';
import type { CsvImport } from './operations.js';
import { countOf } from '../../platform/written.js';
import { scrollsWide } from '../../ui/scrolls.js';

/** New ones and waiting ones named; the figures count all. */
const mostShown = 8;

/** How a file ended: what came in, or why nothing did. */
export function CsvOutcome({ of }: { of: CsvImport }) {
  const { outcome } = of;
  if (of.state === 'cancelled') return <p role="status">Cancelled. Nothing was saved.</p>;
  if (of.state === 'failed') return <p role="alert">{failed[of.code ?? ''] ?? failed['fault']}</p>;
  if (!outcome) return null;
  if (of.state === 'refused') return <Refusal outcome={outcome} />;
  if (of.of === 'examinations') return <ExaminedOutcome of={of} outcome={outcome} />;
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

/** A list of examinations: what is new, which of it failed and counts at once, what waits, what is there already. */
function ExaminedOutcome({ of, outcome }: { of: CsvImport; outcome: NonNullable<CsvImport['outcome']> }) {
  const failed = outcome.failed ?? 0;
  const figures: readonly [string, number][] = [
    ['new in all', outcome.added],
    ['failed, count at once', failed],
    ['passed, count at once', outcome.added - failed - outcome.waiting],
    ['passed, wait for the safety officer', outcome.waiting],
    ['on file or waiting already, with the same contents', outcome.unchanged],
  ];
  return (
    <div role="status">
      <p>{of.dryRun ? 'Would come in; nothing is saved yet:' : `Imported in ${countOf(of.seconds)} s:`}</p>
      <div {...scrollsWide}>
        <table className="tight">
          <tbody>
            {figures.map(([what, count]) => (
              <tr key={what}>
                <th scope="row">{what}</th>
                <td className="num">{countOf(count)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {failed > 0 && (
        <p>
          ■ <b>{of.dryRun ? 'Barred as soon as this is imported' : 'Barred from now on'}</b>, by serial, day and report:
        </p>
      )}
      <Named names={outcome.firstFailed ?? []} count={failed} />
      {failed === 0 && <Named names={outcome.firstAdded} count={outcome.added} />}
      <SaidWaits sentences={outcome.firstWaiting.slice(0, mostShown)} count={outcome.waiting} />
      {outcome.added === 0 && (
        <p>
          Nothing of this file is new. What waits is accepted on the list of <Link to="/waiting">what waits</Link>, not by the file.
        </p>
      )}
      <p className="caution">
        A row is not the report: compare it with what the examiner signed. Dates on file do not replace the examination.
      </p>
    </div>
  );
}

const Named = ({ names, count }: { names: readonly string[]; count: number }) => (
  <ul>
    {names.slice(0, mostShown).map((each) => (
      <li key={each} className="mono">
        {each}
      </li>
    ))}
    {count > mostShown && <li>and {countOf(count - mostShown)} more</li>}
  </ul>
);

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
  'house-stopped': 'Cartwright was stopped while this file came in. Nothing of it was saved; send it again.',
  fault: 'Something went wrong here, not with the file. Nothing of it was saved; the log of the server says what it was.',
};
