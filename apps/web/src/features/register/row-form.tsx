import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { z } from 'zod';
import { writeCsv } from '#kernel';
import { Refused, sendFile } from '../../platform/request.js';
import { AfterSaving } from '../edition/waits.js';
import { Choice, Field, Form, useTypedForm } from '../../ui/form.js';

interface Column {
  readonly heading: string;
  /** The form of what is typed, by an example. */
  readonly hint?: string;
  readonly choices?: readonly string[];
}

/** A heading may hold points and brackets, which a form would read as a path: a field goes by its place. */
const nameAt = (index: number): string => `column${index}`;
const cellsByPlace = z.record(z.string(), z.string());

/** One row of a CSV as a form: the same columns, the same checks, the same words about what is wrong. */
export function RowForm({
  columns,
  cells,
  path,
  isNew,
  asksWhy = false,
  button,
}: {
  columns: readonly Column[];
  cells: Readonly<Record<string, string>>;
  path: string;
  isNew: boolean;
  /** Of the safety officer, whose changes hold at once. */
  asksWhy?: boolean;
  button: string;
}) {
  const onFile = Object.fromEntries(columns.map(({ heading }, index) => [nameAt(index), cells[heading] ?? '']));
  const whole = { ...onFile, why: '' };
  const form = useTypedForm(cellsByPlace, whole);
  const client = useQueryClient();
  const rowOf = (row: Readonly<Record<string, string>>) => columns.map((_, index) => row[nameAt(index)] ?? '');
  const read = useCellsRead(onFile, form.formState.dirtyFields);
  const save = useMutation({
    mutationFn: (typed: Record<string, string>) =>
      sendRows(path, isNew, typed.why ?? '', [columns.map((each) => each.heading), ...(isNew ? [] : [rowOf(read.cells())]), rowOf(typed)]),
    // Whoever has been shown what somebody else wrote decides over it.
    onError: (fault) => {
      for (const { column = '', onFile: now } of fault instanceof Refused ? fault.faults : [])
        if (typeof now === 'string') read.decide(placeOf(column) ?? '', now);
    },
    onSuccess: async (_answer, typed) => {
      form.reset(isNew ? whole : { ...typed, why: '' });
      await client.invalidateQueries();
    },
  });
  const placeOf = (heading: string) => {
    if (heading === 'why') return 'why';
    const index = columns.findIndex((each) => each.heading === heading);
    return index < 0 ? undefined : nameAt(index);
  };
  return (
    <Form form={form} onSubmit={(typed) => save.mutate(typed)} error={save.error} fieldOf={placeOf}>
      <div className="fields">
        {columns.map(({ heading, hint, choices }, index) => {
          const said = { name: nameAt(index), label: heading, description: hint === 'text' ? undefined : hint };
          return choices ? (
            <Choice key={heading} {...said} choices={choices.map((each) => [each, each] as const)} />
          ) : (
            <Field key={heading} {...said} readOnly={index === 0 && !isNew} />
          );
        })}
      </div>
      {asksWhy && <Field name="why" label="Why more is let pass than before, where it is" />}
      {save.isSuccess && <AfterSaving waits={save.data.waits} />}
      <button type="submit" disabled={save.isPending}>
        {button}
      </button>
    </Form>
  );
}

/** Heading and rows as a file of their own; what comes back says what of them waits. */
async function sendRows(path: string, isNew: boolean, why: string, rows: string[][]) {
  const to = isNew ? `${path}?dryRun=false` : `${path}/edit?`;
  const answer = await sendFile(`${to}&reason=${encodeURIComponent(why)}`, writeCsv(rows), 'text/csv');
  return answer as { readonly waits: { readonly id: string; readonly sentence: string }[] };
}

/** What this person read: a field that is being written keeps what stood there before, whatever comes meanwhile. */
function useCellsRead(onFile: Readonly<Record<string, string>>, dirty: Readonly<Record<string, boolean | undefined>>) {
  const read = useRef<Record<string, string>>({ ...onFile });
  useEffect(() => {
    for (const [name, cell] of Object.entries(onFile)) if (dirty[name] !== true) read.current[name] = cell;
  });
  return {
    cells: () => read.current,
    decide: (name: string, cell: string) => {
      read.current[name] = cell;
    },
  };
}
