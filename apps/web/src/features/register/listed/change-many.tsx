import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import { type ItemKind, itemStates, sharedColumns } from '#tour-file';
import type { Person } from '../../../platform/person.js';
import { request } from '../../../platform/request.js';
import { Faults } from '../../../ui/faults.js';
import { Note } from '../../../ui/notes.js';
import { SaidWaits } from '../../edition/waits.js';
import type { Selected } from './selected.js';

const changeMutation = graphql(`
  mutation ChangeItems($ids: [ID!]!, $cells: [CellInput!]!, $reason: String) {
    changeItems(ids: $ids, cells: $cells, reason: $reason) {
      __typename
      ... on ManyChanged { changed unchanged waits { id sentence } }
      ... on ManyRefusal { refused { id column value wanted } }
    }
  }
`);

const changeAll = async (ids: string[], cells: readonly Cell[], why: string) =>
  (await request(changeMutation, { ids, cells: [...cells], reason: why || null })).changeItems;

interface Cell {
  readonly column: string;
  readonly value: string;
}

/** The same written into all that are selected: all of them are saved or none, and what is refused is said item by item. */
export function ChangeMany({ selected, pick, me }: Pick<Selected, 'selected' | 'pick'> & { me: Person }) {
  const lines = [...selected.values()];
  const columns = sharedColumns(new Set(lines.map((each) => each.kind as ItemKind)));
  const [cells, setCells] = useState<readonly Cell[]>([{ column: 'depot', value: '' }]);
  const [why, setWhy] = useState('');
  const client = useQueryClient();
  const save = useMutation({
    mutationFn: () =>
      changeAll(
        lines.map((each) => each.id),
        cells,
        why,
      ),
    onSuccess: async (answer) => {
      if (answer.__typename === 'ManyChanged') await client.invalidateQueries();
    },
  });
  const free = columns.find((column) => !cells.some((cell) => cell.column === column));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <form onSubmit={submit} aria-label="Change what is selected">
      <Cells cells={cells} columns={columns} setCells={setCells} />
      {me.role === 'safety' && (
        <label>
          Why more is let pass than before, where it is
          <input value={why} onChange={(event) => setWhy(event.target.value)} />
        </label>
      )}
      <p className="row">
        <button type="submit" disabled={save.isPending || lines.length === 0}>
          Change {lines.length === 1 ? '1 item' : `${lines.length} items`}
        </button>
        {free !== undefined && (
          <button type="button" className="plain" onClick={() => setCells([...cells, { column: free, value: '' }])}>
            Another column
          </button>
        )}
      </p>
      <Faults of={save.error} />
      {save.data && (
        <Answer
          of={save.data}
          leaveOut={(ids) =>
            pick(
              lines.filter((each) => ids.has(each.id)),
              false,
            )
          }
        />
      )}
    </form>
  );
}

function Cells({
  cells,
  columns,
  setCells,
}: {
  cells: readonly Cell[];
  columns: readonly string[];
  setCells: (cells: readonly Cell[]) => void;
}) {
  const put = (at: number, cell: Cell) => setCells(cells.map((each, index) => (index === at ? cell : each)));
  return (
    <>
      {cells.map((cell, at) => (
        <div className="row" key={at}>
          <label>
            Column
            <select value={cell.column} onChange={(event) => put(at, { column: event.target.value, value: '' })}>
              {columns.map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          </label>
          <CellField cell={cell} put={(value) => put(at, { ...cell, value })} />
          {cells.length > 1 && (
            <button type="button" className="plain" onClick={() => setCells(cells.filter((_, index) => index !== at))}>
              Leave {cell.column} as it is
            </button>
          )}
        </div>
      ))}
    </>
  );
}

function CellField({ cell, put }: { cell: Cell; put: (value: string) => void }) {
  if (cell.column === 'state')
    return (
      <label>
        New value
        <select value={cell.value} onChange={(event) => put(event.target.value)}>
          <option value="">choose a state</option>
          {itemStates.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </label>
    );
  return (
    <label>
      New value
      <input value={cell.value} onChange={(event) => put(event.target.value)} />
      <small className="quiet">Empty: what stands there is taken out.</small>
    </label>
  );
}

type Given = Awaited<ReturnType<typeof changeAll>>;

function Answer({ of, leaveOut }: { of: Given; leaveOut: (ids: ReadonlySet<string>) => void }) {
  if (of.__typename === 'ManyChanged')
    return (
      <div role="status">
        <p>
          ○ {of.changed === 1 ? '1 item is changed' : `${of.changed} items are changed`}
          {of.unchanged > 0 ? `; ${of.unchanged} said so already or wait` : ''}.
        </p>
        <SaidWaits sentences={of.waits.map((each) => each.sentence)} count={of.waits.length} />
      </div>
    );
  const ids = new Set(of.refused.map((each) => each.id));
  return (
    <div role="alert">
      <Note weight="stop">
        <b>stop</b> Nothing is changed: {ids.size === 1 ? '1 item is' : `${ids.size} items are`} refused.
      </Note>
      <ul>
        {of.refused.slice(0, 50).map((each, index) => (
          <li key={index}>
            <Link to={`/register/${encodeURIComponent(each.id)}`}>{each.id}</Link>, {each.column}: wanted {each.wanted}
          </li>
        ))}
        {of.refused.length > 50 && <li>and {of.refused.length - 50} more</li>}
      </ul>
      <button type="button" className="plain" onClick={() => leaveOut(ids)}>
        Take {ids.size === 1 ? 'it' : 'them'} off the selection
      </button>
    </div>
  );
}
