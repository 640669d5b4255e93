import { useMutation, useQueryClient } from '@tanstack/react-query';
import { request } from '../../platform/request.js';
import { countOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { type CsvImport, cancelCsvImportMutation } from './operations.js';

/** How far a file is, in rows, and the way out of it. */
export function CsvProgress({ of }: { of: CsvImport }) {
  const client = useQueryClient();
  const cancel = useMutation({
    mutationFn: () => request(cancelCsvImportMutation, { id: of.id }),
    onSuccess: () => client.invalidateQueries({ queryKey: ['import', of.id] }),
  });
  const { rowsTotal, rowsChecked, rowsWritten, rowsDated, step } = of;
  const counted = of.dryRun ? [rowsChecked] : [rowsChecked, rowsWritten, rowsDated];
  const isCounted = rowsTotal > 0;
  const done = counted.reduce((sum, rows) => sum + rows, 0) / (counted.length * Math.max(1, rowsTotal));
  const figure = (what: string, rows: number) => (
    <li>
      {what} <b>{countOf(rows)}</b> of {countOf(rowsTotal)}
    </li>
  );
  return (
    <div role="status">
      <p>
        <progress max={1} value={isCounted ? done : undefined} aria-label={doing[step] ?? step} /> {doing[step] ?? step},{' '}
        {countOf(of.seconds)} s.
      </p>
      {isCounted && (
        <ul>
          {figure('checked', rowsChecked)}
          {!of.dryRun && figure('written', rowsWritten)}
          {!of.dryRun && figure('days of use worked out', rowsDated)}
        </ul>
      )}
      <p>
        {of.dryRun ? 'Nothing is saved by this.' : 'All rows come in together at the end, or none.'} You may leave this page meanwhile.{' '}
        <button type="button" className="plain" disabled={cancel.isPending} onClick={() => cancel.mutate()}>
          Cancel
        </button>
      </p>
      <Faults of={cancel.error} />
    </div>
  );
}

const doing: Readonly<Record<string, string>> = {
  waiting: 'Waits for the file before it',
  reading: 'Reads the file',
  checking: 'Checks the rows against the register and the tours',
  writing: 'Writes',
  dates: 'Works out days of use',
};
