import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { importOrder } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { countOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { Part } from '../../ui/page.js';
import { type NotRead, type RawSheet, readSheets } from '../sheet/read-sheets.js';
import { CsvOutcome } from './csv-outcome.js';
import { CsvProgress } from './csv-progress.js';
import { KindsBeside } from './kinds-beside.js';
import { LatestImports } from './latest-imports.js';
import { type CsvImport, csvImportQuery } from './operations.js';
import { SheetBlock, isReady } from './sheet-block.js';
import { type SheetToImport, inOrder, sheetToImport } from './sheet-to-import.js';
import { useImportRun } from './use-import-run.js';

const kindsOf = (me: Person): readonly string[] => (me.role === 'safety' ? ['examinations'] : importOrder);

/** Items, models or examinations from spreadsheets: looked at first, then imported in the right order, each sheet as a whole or not at all. */
export function CsvPart({ me }: { me: Person }) {
  const kinds = kindsOf(me);
  const [sheets, setSheets] = useState<readonly SheetToImport[]>([]);
  const [notRead, setNotRead] = useState<readonly NotRead[]>([]);
  const [followed, follow] = useState<string | null>(null);
  const run = useImportRun();
  const take = async (files: readonly File[]): Promise<void> => {
    const read = (await Promise.all(files.map(readSheets))).flat();
    run.reset();
    setNotRead(read.filter((each): each is NotRead => 'why' in each));
    setSheets(inOrder(read.filter((each): each is RawSheet => 'records' in each).map((raw, key) => sheetToImport(key, raw, kinds))));
  };
  const change = (next: SheetToImport): void => {
    run.reset();
    setSheets(inOrder(sheets.map((each) => (each.key === next.key ? next : each))));
  };
  return (
    <Part
      number={1}
      title={me.role === 'safety' ? 'Examinations from spreadsheets' : 'Items, models or examinations from spreadsheets'}
      margin={<KindsBeside me={me} kinds={kinds} />}
    >
      <Files onTake={(files) => void take(files)} />
      {notRead.map((each) => (
        <p key={each.name} role="alert">
          ■ {each.name}: {each.why}
        </p>
      ))}
      {sheets.map((sheet) => (
        <SheetBlock
          key={sheet.key}
          sheet={sheet}
          kinds={kinds}
          onChange={change}
          came={run.of.get(sheet.key)}
          isLast={isLastBegun(run.of, sheet)}
        />
      ))}
      <Buttons sheets={sheets} run={run} />
      <Faults of={run.fault} />
      <Followed id={followed} />
      <LatestImports followed={followed} onFollow={follow} />
    </Part>
  );
}

const isLastBegun = (of: ReadonlyMap<number, CsvImport>, { key }: SheetToImport): boolean => [...of.keys()].at(-1) === key;

/** Chosen or dropped on the field, one or many. */
const Files = ({ onTake }: { onTake: (files: readonly File[]) => void }) => (
  <label className="field">
    Files: CSV with any separator, or .xlsx; several at once, in any order
    <input
      type="file"
      className="drop"
      multiple
      accept=".csv,.tsv,.txt,.xlsx,text/csv,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
      onChange={(event) => onTake([...(event.target.files ?? [])])}
    />
  </label>
);

function Buttons({ sheets, run }: { sheets: readonly SheetToImport[]; run: ReturnType<typeof useImportRun> }) {
  if (sheets.length === 0) return null;
  const left = sheets.filter((sheet) => !(run.of.get(sheet.key)?.state === 'done' && !run.isDry));
  const ready = left.every(isReady);
  const only = sheets.length === 1 ? sheets[0] : undefined;
  const looked = only && run.isDry ? run.of.get(only.key) : undefined;
  const rows = left.reduce((sum, { raw, headingAt }) => sum + Math.max(0, raw.records.length - headingAt - 1), 0);
  const isNothingNew = looked?.of === 'examinations' && looked.outcome?.added === 0;
  if (left.length === 0) return <p role="status">All of it is in.</p>;
  return (
    <div className="row actions">
      {only && (
        <button type="button" className="plain" disabled={!ready || run.isGoing} onClick={() => run.start(left, true)}>
          Show what would change
        </button>
      )}
      {!isNothingNew && (
        <button type="button" disabled={!ready || run.isGoing} onClick={() => run.start(left, false)}>
          {only ? `Import all ${countOf(looked?.outcome?.rows ?? rows)} rows` : `Import ${left.length} sheets in this order`}
        </button>
      )}
      {!ready && <span className="said">■ Something above is not right yet.</span>}
    </div>
  );
}

/** One that came in earlier, by whomever. */
function Followed({ id }: { id: string | null }) {
  const query = useQuery({
    queryKey: ['import', id],
    queryFn: async () => (await request(csvImportQuery, { id: id ?? '' })).csvImport,
    enabled: id !== null,
    refetchInterval: ({ state: { data } }) => (data === undefined || data.state === 'going' ? 1_000 : false),
  });
  if (id === null || !query.data) return <Faults of={query.error} />;
  return query.data.state === 'going' ? <CsvProgress of={query.data} /> : <CsvOutcome of={query.data} />;
}
