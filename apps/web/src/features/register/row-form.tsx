import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useId, useState } from 'react';
import { writeCsv } from '#kernel';
import { Refused, sendFile } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';

interface Column {
  readonly heading: string;
  /** The form of what is typed, by an example. */
  readonly hint?: string;
  readonly choices?: readonly string[];
}

/** One row of a CSV as a form: the same columns, the same checks, the same words about what is wrong. */
export function RowForm({
  columns,
  cells,
  path,
  isNew,
  button,
}: {
  columns: readonly Column[];
  cells: Readonly<Record<string, string>>;
  path: string;
  isNew: boolean;
  button: string;
}) {
  const [values, setValues] = useState(cells);
  const client = useQueryClient();
  const id = useId();
  const save = useMutation({
    mutationFn: () =>
      sendFile(
        `${path}?dryRun=false`,
        writeCsv([columns.map((each) => each.heading), columns.map((each) => values[each.heading] ?? '')]),
        'text/csv',
      ),
    onSuccess: () => client.invalidateQueries(),
  });
  const faultOf = (heading: string) =>
    save.error instanceof Refused ? save.error.faults.find((fault) => fault.column === heading) : undefined;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <form onSubmit={submit}>
      <div className="fields">
        {columns.map(({ heading, hint, choices }, index) => {
          const fault = faultOf(heading);
          const name = `${id}-${index}`;
          const common = {
            id: name,
            value: values[heading] ?? '',
            'aria-invalid': fault !== undefined,
            'aria-describedby': fault || hint ? `${name}-say` : undefined,
          };
          return (
            <label key={heading} htmlFor={name}>
              {heading}
              {choices ? (
                <select {...common} onChange={(event) => setValues({ ...values, [heading]: event.target.value })}>
                  {choices.map((each) => (
                    <option key={each}>{each}</option>
                  ))}
                </select>
              ) : (
                <input
                  {...common}
                  readOnly={index === 0 && !isNew}
                  onChange={(event) => setValues({ ...values, [heading]: event.target.value })}
                />
              )}
              {(fault || (hint && hint !== 'text')) && (
                <small id={`${name}-say`} className={fault ? 'fault' : 'quiet'}>
                  {fault ? `■ wanted ${fault.wanted}` : hint}
                </small>
              )}
            </label>
          );
        })}
      </div>
      <Faults of={save.error} />
      {save.isSuccess && <p role="status">Saved.</p>}
      <button type="submit" disabled={save.isPending}>
        {button}
      </button>
    </form>
  );
}
