import { useState } from 'react';
import { type Item, type ItemKind, csvColumns, itemKinds, itemStates } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { RowForm } from './row-form.js';

const hints: Readonly<Record<string, string>> = {
  in: 'the case or truck it lies in',
  'hired from': 'YYYY-MM-DD',
  'hired to': 'YYYY-MM-DD',
  'declared on': 'day of the maker’s declaration of conformity, YYYY-MM-DD',
  'bought on': 'YYYY-MM-DD',
  'first used on': 'YYYY-MM-DD',
  'boxes, top first': 'serials with blanks between',
};

const columnsOf = (kind: ItemKind) =>
  csvColumns(kind).map(({ heading }) => ({
    heading,
    hint: hints[heading],
    ...(heading === 'state' ? { choices: itemStates } : {}),
  }));

const cellsOf = (item: Item) => Object.fromEntries(csvColumns(item.kind).map(({ heading, cell }) => [heading, cell(item)]));

export function ItemForm({ item, me }: { item: Item; me: Person }) {
  return (
    <details>
      <summary>Change what is on file</summary>
      <RowForm
        columns={columnsOf(item.kind)}
        cells={cellsOf(item)}
        path={`/api/csv/items/${item.kind}`}
        isNew={false}
        asksWhy={me.role === 'safety'}
        button="Save"
      />
    </details>
  );
}

export function NewItem({ me }: { me: Person }) {
  const [kind, setKind] = useState<ItemKind>('box');
  return (
    <details>
      <summary>Put an item on file</summary>
      <div className="fields">
        <label>
          Kind
          <select value={kind} onChange={(event) => setKind(event.target.value as ItemKind)}>
            {itemKinds.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
      </div>
      <RowForm
        key={kind}
        columns={columnsOf(kind)}
        cells={{ state: 'in service' }}
        path={`/api/csv/items/${kind}`}
        isNew
        asksWhy={me.role === 'safety'}
        button={`Put the ${kind} on file`}
      />
    </details>
  );
}
