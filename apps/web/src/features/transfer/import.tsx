import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import { itemKinds, modelKinds } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { sendFile } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { SaidWaits } from '../edition/waits.js';
import { Page, Part } from '../../ui/page.js';

interface CsvAnswer {
  readonly rows: number;
  readonly added: string[];
  readonly changed: { id: string; what: string }[];
  readonly unchanged: number;
  readonly waits: { id: string; sentence: string }[];
}

interface TourAnswer {
  readonly tour: string;
  readonly models: number;
  readonly items: number;
  readonly shows: number;
  readonly waiting: number;
  readonly waits: string[];
}

export function Import({ me }: { me: Person }) {
  if (me.role === 'safety')
    return <Page title="Import">The warehouse and the system tech import. You see what came in on each item’s page.</Page>;
  return (
    <Page title="Import" lede="First it is shown what would change. Then all rows come in, or none.">
      <Csv />
      {me.role === 'system' && <TourFile />}
    </Page>
  );
}

function Csv() {
  const [kind, setKind] = useState('items/box');
  const [file, setFile] = useState<File | null>(null);
  const client = useQueryClient();
  const dry = useMutation({ mutationFn: () => sendFile(`/api/csv/${kind}?dryRun=true`, file!, 'text/csv') as Promise<CsvAnswer> });
  const real = useMutation({
    mutationFn: () => sendFile(`/api/csv/${kind}?dryRun=false`, file!, 'text/csv') as Promise<CsvAnswer>,
    onSuccess: () => client.invalidateQueries(),
  });
  const answer = real.data ?? dry.data;
  const reset = () => {
    dry.reset();
    real.reset();
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
        </>
      }
    >
      <div className="fields">
        <label>
          Kind
          <select
            value={kind}
            onChange={(event) => {
              setKind(event.target.value);
              reset();
            }}
          >
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
        <button type="button" disabled={!file || dry.isPending} onClick={() => dry.mutate()}>
          Show what would change
        </button>
        {dry.data && !real.data && (
          <button type="button" disabled={real.isPending} onClick={() => real.mutate()}>
            Import all {dry.data.rows} rows
          </button>
        )}
      </div>
      <Faults of={real.error ?? dry.error} />
      {answer && (
        <div role="status">
          <p>
            {real.data ? 'Imported' : 'Would change'}: {answer.added.length} new, {answer.changed.length} changed, {answer.unchanged} as
            they are.
          </p>
          <ul>
            {answer.added.slice(0, 30).map((id) => (
              <li key={id}>
                new: <span className="mono">{id}</span>
              </li>
            ))}
            {answer.changed.slice(0, 50).map((each) => (
              <li key={each.id}>
                <span className="mono">{each.id}</span>: {each.what}
              </li>
            ))}
          </ul>
          <SaidWaits sentences={answer.waits.map((each) => each.sentence)} count={answer.waits.length} />
        </div>
      )}
    </Part>
  );
}

function TourFile() {
  const [file, setFile] = useState<File | null>(null);
  const client = useQueryClient();
  const dry = useMutation({ mutationFn: () => sendFile('/api/tours/file?dryRun=true', file!, 'application/json') as Promise<TourAnswer> });
  const real = useMutation({
    mutationFn: () => sendFile('/api/tours/file?dryRun=false', file!, 'application/json') as Promise<TourAnswer>,
    onSuccess: () => client.invalidateQueries(),
  });
  const answer = real.data ?? dry.data;
  return (
    <Part
      number={2}
      title="A whole tour from a file"
      margin={
        <p className="note">
          The same file that <span className="mono">npm run plan</span> reads. What is on file already must be the same.
        </p>
      }
    >
      <div className="fields">
        <label>
          File (JSON)
          <input
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              setFile(event.target.files?.[0] ?? null);
              dry.reset();
              real.reset();
            }}
          />
        </label>
      </div>
      <div className="row">
        <button type="button" disabled={!file || dry.isPending} onClick={() => dry.mutate()}>
          Show what would come in
        </button>
        {dry.data && !real.data && (
          <button type="button" disabled={real.isPending} onClick={() => real.mutate()}>
            Import the tour
          </button>
        )}
      </div>
      <Faults of={real.error ?? dry.error} />
      {answer && (
        <p role="status">
          {real.data ? 'Imported' : 'Would come in'}: {answer.tour} with {answer.shows} shows, {answer.items} items, {answer.models} models.{' '}
          {real.data && <Link to="/tours">Open it</Link>}
        </p>
      )}
      {answer && answer.waiting > 0 && (
        <>
          <p>{answer.waiting} of what it says for itself waits for the safety officer.</p>
          <SaidWaits sentences={answer.waits} count={answer.waiting} />
        </>
      )}
    </Part>
  );
}
