import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { Link, useParams } from 'react-router';
import { graphql } from '#contracts';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { More } from '../../ui/more.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { ItemLife } from '../inspection/report-page.js';
import { WaitsOfItem } from '../edition/waits.js';
import { ExaminationForm } from './examined/examination-form.js';
import { ItemForm } from './item-form.js';
import { type ExaminationRecord, Records } from './examined/records.js';
import { useItemHistory, useItemRecords } from './examined/use-item-pages.js';
import { LotPart } from './lots/lot-part.js';
import { PutSerialRight } from './put-serial-right.js';
import { WearCheck } from './wear-check.js';

const itemQuery = graphql(`
  query ItemPage($id: ID!) {
    item(id: $id) {
      item
      summary { id kind model state depot count place dueOn dueState }
      promises { tour from to count }
    }
  }
`);
const quarantine = graphql(
  `mutation Quarantine($itemId: ID!, $reason: String!) { quarantine(itemId: $itemId, reason: $reason) { summary { id state } } }`,
);
const release = graphql(
  `mutation ReleaseFromQuarantine($itemId: ID!, $reason: String!) { releaseFromQuarantine(itemId: $itemId, reason: $reason) { summary { id state } } }`,
);
const incident = graphql(
  `mutation RecordIncident($itemId: ID!, $on: String!, $what: String!) { recordIncident(itemId: $itemId, on: $on, what: $what) { summary { id } } }`,
);

const readItem = (id: string) => request(itemQuery, { id });

export function ItemScreen({ me }: { me: Person }) {
  const { itemId = '' } = useParams();
  const query = useQuery({ queryKey: ['item', itemId], queryFn: () => readItem(itemId) });
  return (
    <Loaded query={query}>
      {({ item: { item, summary, promises } }) => (
        <Page
          title={summary.id}
          lede={`${summary.kind}${summary.count !== null ? `, batch of ${summary.count}` : ''} · ${summary.model} · ${summary.place}`}
        >
          <Part number={1} title="State" margin={<LastDay of={summary} />}>
            <StateWords item={item} summary={summary} />
            <WaitsOfItem id={summary.id} />
            {summary.count !== null && <LotPart id={summary.id} count={summary.count} state={summary.state} me={me} />}
            <ItemForm item={item} me={me} />
            <PutSerialRight id={summary.id} />
            <Acts id={summary.id} kind={summary.kind} state={summary.state} me={me} examined={summary.dueState !== null} />
          </Part>
          <Part number={2} title="Examinations">
            <ItemRecords id={summary.id} kind={summary.kind} mayCorrect={actsAsOfficer(me)} />
            {['shackle', 'pin', 'sling', 'grid', 'frame', 'cell'].includes(summary.kind) && (
              <details>
                <summary>Judge a worn dimension</summary>
                <WearCheck />
              </details>
            )}
          </Part>
          <Part number={3} title="Promised to">
            <Promises promises={promises} />
          </Part>
          <Part number={4} title="Its life, day by day">
            <ItemLife id={summary.id} />
          </Part>
          <Part number={5} title="History">
            <History id={summary.id} />
          </Part>
        </Page>
      )}
    </Loaded>
  );
}

type Shown = Awaited<ReturnType<typeof readItem>>['item'];

function LastDay({ of: { dueState, dueOn } }: { of: Shown['summary'] }) {
  if (dueState === null) return null;
  return (
    <p className="note">
      <b>{dueState}</b>
      {dueOn ? `, last day of use ${dueOn}` : ''}
    </p>
  );
}

function StateWords({ item, summary }: Pick<Shown, 'item' | 'summary'>) {
  return (
    <>
      <p>
        {summary.state === 'in service' ? '○' : '■'} <b>{summary.state}</b>
        {item.reason ? `: ${item.reason}` : ''}. Home depot {summary.depot}.
        {item.owner ? ` ${item.lent ? 'Kit of' : 'Belongs to'} ${item.owner}.` : ''}
        {item.hire ? ` Hired in from ${item.hire.from} to ${item.hire.to}.` : ''}
      </p>
      {item.lent && !item.lent.paper && !item.lent.cleared && !item.lent.givenBack && (
        <Note weight="stop">
          Its paper was not seen: it must not be used. <Link to="/kit-of-others">Kit of others</Link>
        </Note>
      )}
      {item.stack && (
        <p>
          Holds, top first: <span className="mono">{item.stack.join(', ') || 'nothing'}</span>
        </p>
      )}
      <p>
        <Link to={`/labels?${new URLSearchParams({ find: summary.id, kind: summary.kind })}`}>Print its label</Link>
      </p>
    </>
  );
}

interface PromiseOfItem {
  readonly tour: string;
  readonly from: string;
  readonly to: string;
  readonly count?: number | null;
}

function Promises({ promises }: { promises: readonly PromiseOfItem[] }) {
  return promises.length === 0 ? (
    <p className="quiet">Nobody holds it.</p>
  ) : (
    <ul>
      {promises.map((each) => (
        <li key={each.tour}>
          {each.tour}, {each.from === each.to ? each.from : `${each.from} to ${each.to}`}
          {each.count ? `, ${each.count} of them` : ''}
        </li>
      ))}
    </ul>
  );
}

function ItemRecords({ id, kind, mayCorrect }: { id: string; kind: string; mayCorrect: boolean }) {
  const query = useItemRecords(id);
  return (
    <Loaded query={query}>
      {({ pages }) => (
        <>
          <Records
            records={pages.flatMap((page) => page.edges.map((edge) => edge.node as ExaminationRecord))}
            itemId={id}
            kind={kind}
            mayCorrect={mayCorrect}
          />
          <More of={query} />
        </>
      )}
    </Loaded>
  );
}

function History({ id }: { id: string }) {
  const query = useItemHistory(id);
  return (
    <Loaded query={query}>
      {({ pages }) =>
        pages[0]?.edges.length === 0 ? (
          <p className="quiet">Nothing has happened to it since it came on file.</p>
        ) : (
          <>
            <ul>
              {pages
                .flatMap((page) => page.edges)
                .map(({ node }, index) => (
                  <li key={index}>
                    {momentOf(node.at)} · {node.who}: {node.sentence}
                  </li>
                ))}
            </ul>
            <More of={query} />
          </>
        )
      }
    </Loaded>
  );
}

function Acts({ id, kind, state, me, examined }: { id: string; kind: string; state: string; me: Person; examined: boolean }) {
  return (
    <>
      {state !== 'quarantined' && (
        <Act
          title="Quarantine it"
          button="Quarantine"
          fields={[['reason', 'Why']]}
          run={({ reason }) => request(quarantine, { itemId: id, reason: reason! })}
        />
      )}
      {state === 'quarantined' && actsAsOfficer(me) && (
        <Act
          title="Release it from quarantine"
          button="Release"
          fields={[['reason', 'What was found and done']]}
          run={({ reason }) => request(release, { itemId: id, reason: reason! })}
        />
      )}
      {examined && actsAsOfficer(me) && (
        <details>
          <summary>Record an examination</summary>
          <ExaminationForm itemId={id} kind={kind} />
        </details>
      )}
      <Act
        title="Record an incident (shock load, overload, drop)"
        button="Record and block"
        fields={[
          ['on', 'Day', 'date'],
          ['what', 'What happened'],
        ]}
        run={({ on, what }) => request(incident, { itemId: id, on: on!, what: what! })}
      />
    </>
  );
}

function Act({
  title,
  button,
  fields,
  run,
}: {
  title: string;
  button: string;
  fields: readonly (readonly [string, string, string?])[];
  run: (values: Record<string, string>) => Promise<unknown>;
}) {
  const [values, setValues] = useState<Record<string, string>>(Object.fromEntries(fields.map(([key]) => [key, ''])));
  const client = useQueryClient();
  const act = useMutation({
    mutationFn: () => run(values),
    onSuccess: async () => {
      setValues(Object.fromEntries(fields.map(([key]) => [key, ''])));
      await client.invalidateQueries();
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    act.mutate();
  };
  return (
    <details>
      <summary>{title}</summary>
      <form onSubmit={submit}>
        <div className="fields">
          {fields.map(([key, label, type]) => (
            <label key={key}>
              {label}
              <input type={type ?? 'text'} value={values[key]} onChange={(event) => setValues({ ...values, [key]: event.target.value })} />
            </label>
          ))}
        </div>
        <Faults of={act.error} />
        <button type="submit" disabled={act.isPending}>
          {button}
        </button>
      </form>
    </details>
  );
}
