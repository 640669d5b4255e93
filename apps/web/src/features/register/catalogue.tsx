import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { graphql } from '#contracts';
import { type ModelKind, type LoadRule, type RiggingSystem, modelCell, modelColumns, modelExamples, modelKinds } from '#tour-file';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { Loaded } from '../../ui/page.js';
import { RowForm } from './row-form.js';
import { RegimePart } from './regime-part.js';
import { SystemPart } from './system-part.js';

const modelsQuery = graphql(`query Models { catalogueModels { kind model itemCount data } riggingSystems rules }`);

const columnsOf = (kind: ModelKind) => modelColumns(kind).map(({ heading, form }) => ({ heading, hint: form.hint }));

const cellsOf = (kind: ModelKind, model: object) =>
  Object.fromEntries(modelColumns(kind).map((column) => [column.heading, modelCell(model, column)]));

/** Catalogue models and rigging systems: looked at by everybody, written by the warehouse and the system tech. */
export function Catalogue({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['models'], queryFn: () => request(modelsQuery) });
  const mayWrite = me.role !== 'safety';
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
                      <td>{each.model}</td>
                      <td>{each.kind}</td>
                      <td className="num">{each.itemCount}</td>
                      <td>
                        <details>
                          <summary>Show</summary>
                          <Model kind={each.kind as ModelKind} data={each.data as object} mayWrite={mayWrite} />
                        </details>
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
              {mayWrite && <NewModel />}
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
                <SystemPart key={system.id} system={system} me={me} />
              ))}
              {riggingSystems.length === 0 && <p>No rigging system is on file.</p>}
            </>
          )}
        </Loaded>
      </details>
      <details>
        <summary>Load regimes</summary>
        <Loaded query={query}>
          {({ rules }) => (rules as { loadRules: LoadRule[] }).loadRules.map((rule) => <RegimePart key={rule.id} rule={rule} me={me} />)}
        </Loaded>
      </details>
    </>
  );
}

function Model({ kind, data, mayWrite }: { kind: ModelKind; data: object; mayWrite: boolean }) {
  const cells = cellsOf(kind, data);
  if (mayWrite)
    return <RowForm columns={columnsOf(kind)} cells={cells} path={`/api/csv/models/${kind}`} isNew={false} button="Save the model" />;
  return (
    <ul className="plain">
      {Object.entries(cells)
        .filter(([, text]) => text !== '')
        .map(([heading, text]) => (
          <li key={heading}>
            {heading}: <span className="mono">{text}</span>
          </li>
        ))}
    </ul>
  );
}

function NewModel() {
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
      <p className="quiet">The fields begin with made-up figures: write your maker’s over them.</p>
      <RowForm
        key={kind}
        columns={columnsOf(kind)}
        cells={cellsOf(kind, modelExamples[kind])}
        path={`/api/csv/models/${kind}`}
        isNew
        button="Put the model on file"
      />
    </details>
  );
}
