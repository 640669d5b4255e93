import { useState } from 'react';
import { itemKinds, modelKinds } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { Faults } from '../../ui/faults.js';
import { Part } from '../../ui/page.js';
import { CsvOutcome } from './csv-outcome.js';
import { CsvProgress } from './csv-progress.js';
import { LatestImports } from './latest-imports.js';
import type { CsvImport } from './operations.js';
import { useCsvImport } from './use-csv-import.js';
import { countOf } from '../../platform/written.js';

/** Items or models from a file: shown first, then imported; both go on beside everything else, and are followed here. */
export function CsvPart({ me }: { me: Person }) {
  const [kind, setKind] = useState(me.role === 'safety' ? 'examinations' : 'items/box');
  const [file, setFile] = useState<File | null>(null);
  const { send, fault, one, isGoing, followed, follow, reset } = useCsvImport(kind, file);
  return (
    <Part
      number={1}
      title={me.role === 'safety' ? 'Examinations from a CSV file' : 'Items, models or examinations from a CSV file'}
      margin={<Beside kind={kind} me={me} />}
    >
      <div className="fields">
        <KindField
          me={me}
          value={kind}
          onChange={(value) => {
            setKind(value);
            reset();
          }}
        />
        <label>
          File (CSV, UTF-8)
          <input
            type="file"
            accept=".csv,text/csv"
            onChange={(event) => {
              setFile(event.target.files?.[0] ?? null);
              reset();
            }}
          />
        </label>
      </div>
      <div className="row">
        <button type="button" disabled={!file || send.isPending || isGoing} onClick={() => send.mutate(true)}>
          Show what would change
        </button>
        {one?.state === 'done' && one.dryRun && one.id === send.data?.id && !isAllThere(one) && (
          <button type="button" disabled={send.isPending} onClick={() => send.mutate(false)}>
            Import all {countOf(one.outcome?.rows ?? 0)} rows
          </button>
        )}
      </div>
      <Faults of={fault} />
      {send.isPending && <p role="status">The file is on its way ...</p>}
      {one?.state === 'going' && <CsvProgress of={one} />}
      {one && one.state !== 'going' && <CsvOutcome of={one} />}
      <LatestImports followed={followed} onFollow={follow} />
    </Part>
  );
}

/** A list of which every examination is there already: importing it would do nothing. */
const isAllThere = (one: CsvImport): boolean => one.of === 'examinations' && one.outcome?.added === 0;

const KindField = ({ me, value, onChange }: { me: Person; value: string; onChange: (value: string) => void }) => (
  <label>
    Kind
    <select value={value} onChange={(event) => onChange(event.target.value)}>
      {me.role !== 'safety' && (
        <>
          <optgroup label="Items">
            {itemKinds.map((each) => (
              <option key={each} value={`items/${each}`}>
                {each}
              </option>
            ))}
          </optgroup>
          <optgroup label="Catalogue models">
            {modelKinds.map((each) => (
              <option key={each} value={`models/${each}`}>
                models: {each}
              </option>
            ))}
          </optgroup>
        </>
      )}
      <optgroup label="Examiner’s list">
        <option value="examinations">examinations</option>
      </optgroup>
    </select>
  </label>
);

const Beside = ({ kind, me }: { kind: string; me: Person }) => (
  <>
    <p>
      <a href={`/api/csv/${kind}/example`}>Example file</a>
    </p>
    <p>
      <a href={`/api/csv/${kind}`}>Everything of this kind as CSV</a>
    </p>
    {kind === 'examinations' && (
      <p className="note">
        One row is one examination of one item or batch. What failed counts at once; what passed{' '}
        {me.role === 'safety' ? 'counts, as you record it yourself' : 'waits for the safety officer'}. Known by serial, day, check and
        number of the report.
      </p>
    )}
    <p>Up to 100,000 rows in one file, 20 MB.</p>
  </>
);
