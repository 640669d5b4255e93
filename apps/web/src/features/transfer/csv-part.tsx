import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { itemKinds, modelKinds } from '#tour-file';
import { request, sendFile } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Part } from '../../ui/page.js';
import { CsvOutcome } from './csv-outcome.js';
import { CsvProgress } from './csv-progress.js';
import { LatestImports } from './latest-imports.js';
import { csvImportQuery } from './operations.js';

/** Where no change is heard of, it is looked at this often, ms. */
const lookEveryMs = 1_000;

/** Items or models from a file: shown first, then imported; both go on beside everything else, and are followed here. */
export function CsvPart() {
  const client = useQueryClient();
  const [kind, setKind] = useState('items/box');
  const [file, setFile] = useState<File | null>(null);
  const [followed, setFollowed] = useState<string | null>(null);
  const send = useMutation({
    mutationFn: (isDry: boolean) => sendFile(`/api/imports/${kind}?dryRun=${isDry}`, file!, 'text/csv') as Promise<{ id: string }>,
    onSuccess: ({ id }) => {
      setFollowed(id);
      void client.invalidateQueries({ queryKey: ['imports'] });
    },
  });
  const query = useQuery({
    queryKey: ['import', followed],
    queryFn: async () => (await request(csvImportQuery, { id: followed! })).csvImport,
    enabled: followed !== null,
    refetchInterval: ({ state: { data } }) => (data === undefined || data.state === 'going' ? lookEveryMs : false),
  });
  const one = followed === null ? undefined : query.data;
  const isGoing = followed !== null && (one === undefined || one.state === 'going');
  const isIn = one?.state === 'done' && !one.dryRun;
  useEffect(() => {
    if (isIn) void client.invalidateQueries();
  }, [isIn, client]);
  const reset = () => {
    send.reset();
    setFollowed(null);
  };
  return (
    <Part
      number={1}
      title="Items or models from a CSV file"
      margin={
        <>
          <p>
            <a href={`/api/csv/${kind}/example`}>Example file</a>
          </p>
          <p>
            <a href={`/api/csv/${kind}`}>Everything of this kind as CSV</a>
          </p>
          <p className="note">Up to 100,000 rows in one file, 20 MB.</p>
        </>
      }
    >
      <div className="fields">
        <KindField
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
        {one?.state === 'done' && one.dryRun && file && (
          <button type="button" disabled={send.isPending} onClick={() => send.mutate(false)}>
            Import all {one.outcome?.rows.toLocaleString()} rows
          </button>
        )}
      </div>
      <Faults of={send.error ?? query.error} />
      {send.isPending && <p role="status">The file is on its way ...</p>}
      {one?.state === 'going' && <CsvProgress of={one} />}
      {one && one.state !== 'going' && <CsvOutcome of={one} />}
      <LatestImports followed={followed} onFollow={setFollowed} />
    </Part>
  );
}

const KindField = ({ value, onChange }: { value: string; onChange: (value: string) => void }) => (
  <label>
    Kind
    <select value={value} onChange={(event) => onChange(event.target.value)}>
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
    </select>
  </label>
);
