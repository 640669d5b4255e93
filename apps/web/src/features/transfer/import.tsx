import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'react-router';
import type { Person } from '../../platform/person.js';
import { sendFile } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { SaidWaits } from '../edition/waits.js';
import { Page, Part } from '../../ui/page.js';
import { CsvPart } from './csv-part.js';

interface TourAnswer {
  readonly tour: string;
  readonly models: number;
  readonly items: number;
  readonly shows: number;
  readonly waiting: number;
  readonly waits: string[];
}

export function Import({ me }: { me: Person }) {
  return (
    <Page title="Import" lede="First it is shown what would change. Then all rows come in, or none.">
      <CsvPart me={me} />
      {me.role === 'system' && <TourFile />}
    </Page>
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
