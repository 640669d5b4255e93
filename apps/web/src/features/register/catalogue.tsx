import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { type ModelKind, type LoadRule, type RiggingSystem, modelCell, modelColumns, modelKinds } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Loaded } from '../../ui/page.js';
import { waitsOfCatalogueQuery } from '../edition/operations.js';
import { WaitLines } from '../edition/waits.js';
import { modelsQuery } from './operations.js';
import { RowForm } from './row-form.js';
import { RegimePart } from './regime-part.js';
import { SystemPart } from './system-part.js';

const columnsOf = (kind: ModelKind) => modelColumns(kind).map(({ heading, form }) => ({ heading, hint: form.hint }));

const cellsOf = (kind: ModelKind, model: object) =>
  Object.fromEntries(modelColumns(kind).map((column) => [column.heading, modelCell(model, column)]));

/** Catalogue models and rigging systems: looked at and written by everybody; what others than the safety officer write to let more pass waits for one. */
export function Catalogue({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['models'], queryFn: () => request(modelsQuery) });
  const waiting = useQuery({
    queryKey: ['waits-of-catalogue'],
    queryFn: async () => (await request(waitsOfCatalogueQuery)).proposalsOfCatalogue,
  });
  const waitsOf = (kind: string, subject: string) => (waiting.data ?? []).filter((each) => each.kind === kind && each.subject === subject);
  return (
    <>
      <details>
        <summary>Catalogue models</summary>
        <Loaded query={query}>
          {({ catalogueModels }) => (
            <>
              <table>
                <thead>
                  <tr>
                    <th>Model</th>
                    <th>Kind</th>
                    <th className="num">Items</th>
                    <th>Figures on file</th>
                  </tr>
                </thead>
                <tbody>
                  {catalogueModels.map((each) => (
                    <tr key={`${each.kind} ${each.model}`}>
                      <td>
                        {each.model}
                        <WaitLines waits={waitsOf('model', each.model)} />
                      </td>
                      <td>{each.kind}</td>
                      <td className="num">{each.itemCount}</td>
                      <td>
                        <details>
                          <summary>Show</summary>
                          <Model kind={each.kind as ModelKind} data={each.data as object} me={me} />
                        </details>
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
              <NewModel me={me} />
            </>
          )}
        </Loaded>
      </details>
      <details>
        <summary>Rigging systems</summary>
        <Loaded query={query}>
          {({ riggingSystems }) => (
            <>
              {(riggingSystems as RiggingSystem[]).map((system) => (
                <div key={system.id}>
                  <SystemPart system={system} me={me} />
                  <WaitLines waits={waitsOf('system', system.id)} />
                </div>
              ))}
              {riggingSystems.length === 0 && <p>No rigging system is on file.</p>}
            </>
          )}
        </Loaded>
      </details>
      <details>
        <summary>Load regimes</summary>
        <Loaded query={query}>
          {({ rules }) =>
            (rules as { loadRules: LoadRule[] }).loadRules.map((rule) => (
              <div key={rule.id}>
                <RegimePart rule={rule} me={me} />
                <WaitLines waits={waitsOf('load rule', rule.id)} />
              </div>
            ))
          }
        </Loaded>
      </details>
    </>
  );
}

function Model({ kind, data, me }: { kind: ModelKind; data: object; me: Person }) {
  return (
    <RowForm
      columns={columnsOf(kind)}
      cells={cellsOf(kind, data)}
      path={`/api/csv/models/${kind}`}
      isNew={false}
      asksWhy={me.role === 'safety'}
      button="Save the model"
    />
  );
}

function NewModel({ me }: { me: Person }) {
  const [kind, setKind] = useState<ModelKind>('boxes');
  return (
    <details>
      <summary>Put a model on file</summary>
      <div className="fields">
        <label>
          Kind
          <select value={kind} onChange={(event) => setKind(event.target.value as ModelKind)}>
            {modelKinds.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </label>
      </div>
      <p className="quiet">
        Figures are the maker’s, each with its unit beside it. Leave empty what is not known: a rating that is missing is said wherever it
        would be compared, and none is made up.
      </p>
      <RowForm
        key={kind}
        columns={columnsOf(kind)}
        cells={{}}
        path={`/api/csv/models/${kind}`}
        isNew
        asksWhy={me.role === 'safety'}
        button="Put the model on file"
      />
    </details>
  );
}
