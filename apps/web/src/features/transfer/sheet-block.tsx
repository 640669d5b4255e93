import { useMemo } from 'react';
import { type CsvFault, knownColumns } from '#tour-file';
import { countOf } from '../../platform/written.js';
import { Columns, columnsSaid } from '../sheet/columns.js';
import { SheetFaults, grouped } from '../sheet/sheet-faults.js';
import { CsvOutcome } from './csv-outcome.js';
import { CsvProgress } from './csv-progress.js';
import { KindOptions } from './kinds-beside.js';
import type { CsvImport } from './operations.js';
import { type SheetToImport, faultsHere, matched, missingColumns, ofKind } from './sheet-to-import.js';

/** Nothing that is seen here stands against it. */
export const isReady = (sheet: SheetToImport): boolean =>
  sheet.kind !== '' && missingColumns(sheet).length === 0 && faultsHere(sheet, matched(sheet)).length === 0;

/** One sheet: what it is, how its columns are read, what is wrong with it, how it came in. */
export function SheetBlock({
  sheet,
  kinds,
  onChange,
  came,
  isLast,
}: {
  sheet: SheetToImport;
  kinds: readonly string[];
  onChange: (sheet: SheetToImport) => void;
  came: CsvImport | undefined;
  /** The last one that was begun: shown in full. */
  isLast: boolean;
}) {
  const { raw, headingAt, kind, match } = sheet;
  const heading = raw.records[headingAt] ?? [];
  const of = useMemo(() => matched(sheet), [sheet]);
  const missing = missingColumns(sheet);
  const faults = useMemo(
    (): readonly CsvFault[] => (kind === '' || missing.length > 0 ? [] : faultsHere(sheet, of)),
    [sheet, of, kind, missing.length],
  );
  const isAsked = kind === '' || missing.length > 0;
  return (
    <fieldset>
      <legend>
        {raw.name}: {countOf(of.records.length - 1)} {of.records.length === 2 ? 'row' : 'rows'}
      </legend>
      <div className="row">
        <label>
          What it holds
          <select aria-label={`What ${raw.name} holds`} value={kind} onChange={(event) => onChange(ofKind(sheet, event.target.value))}>
            <option value="">■ choose one</option>
            <KindOptions kinds={kinds} />
          </select>
        </label>
        <span className="quiet">
          {kind !== '' && `${columnsSaid(heading, match)}.`} {raw.said && `◐ ${raw.said}`}
        </span>
      </div>
      {missing.length > 0 && <p role="alert">■ Without a column for {missing.join(', ')}. Choose below which of its columns that is.</p>}
      {kind !== '' && (
        <details open={isAsked}>
          <summary>Columns of {raw.name}</summary>
          <Columns
            records={raw.records}
            headingAt={headingAt}
            match={match}
            columns={knownColumns(kind)}
            onMatch={(next) => onChange({ ...sheet, match: next })}
          />
        </details>
      )}
      {faults.length > 0 && <SheetFaults faults={grouped(faults)} raw={raw} headingAt={headingAt} sheet={of} />}
      <Came sheet={sheet} of={of} came={came} isLast={isLast} />
    </fieldset>
  );
}

function Came({
  sheet,
  of,
  came,
  isLast,
}: {
  sheet: SheetToImport;
  of: ReturnType<typeof matched>;
  came: CsvImport | undefined;
  isLast: boolean;
}) {
  if (!came) return null;
  if (came.state === 'going') return <CsvProgress of={came} />;
  if (came.state === 'refused' && came.outcome)
    return <SheetFaults faults={came.outcome.faults} raw={sheet.raw} headingAt={sheet.headingAt} sheet={of} />;
  if (isLast || came.state !== 'done' || came.dryRun) return <CsvOutcome of={came} />;
  const { added = 0, changed = 0, unchanged = 0, waiting = 0 } = came.outcome ?? {};
  return (
    <p>
      ○ In: {countOf(added)} new, {countOf(changed)} changed, {countOf(unchanged)} as they are
      {waiting > 0 && <>; {countOf(waiting)} wait for the safety officer</>}.
    </p>
  );
}
