import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useParams } from 'react-router';
import { english } from '#words';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { type AnswerOf, request, sendFile } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Page } from '../../ui/page.js';
import { enterResults, visitListQuery } from './operations.js';
import { scrolls } from '../../ui/scrolls.js';

type List = AnswerOf<typeof visitListQuery>['visitList'];

interface Typed {
  readonly outcome: string;
  readonly report: string;
  readonly remark: string;
}

/** In the order of the cells; on a narrow screen each stands before its cell. */
const columns = {
  item: 'Item',
  what: 'What',
  where: 'Where',
  until: 'In date until',
  carriesTo: 'A pass carries to',
  neededOn: 'Needed on',
  every: 'Examined every',
  outcome: 'Outcome',
  report: 'Report number',
  remark: 'Remark',
} as const;

const nothing: Typed = { outcome: '', report: '', remark: '' };

/** The work list of a visit: printed for the examiner, and the place where his results are entered. */
export function VisitScreen({ me }: { me: Person }) {
  const { visitId = '' } = useParams();
  const query = useQuery({
    queryKey: ['visit-list', visitId],
    queryFn: async () => (await request(visitListQuery, { id: visitId })).visitList,
  });
  return (
    <Loaded query={query}>
      {(list) => (
        <Page
          title={`Visit of ${list.visit.onDay}`}
          lede={`${list.visit.placeName}. ${list.items.length} ${list.items.length === 1 ? 'item' : 'items'}, ${list.visit.entered} entered${list.visit.state === 'cancelled' ? '. ■ Cancelled: nobody comes' : ''}.`}
          actions={
            <button type="button" onClick={() => window.print()}>
              Print the list
            </button>
          }
        >
          {list.items.length === 0 ? (
            <p>No list yet: agree the visits of the season first.</p>
          ) : (
            <WorkList list={list} mayEnter={actsAsOfficer(me, 'the house')} />
          )}
          <p className="caution">
            Intervals are those of the rules on file. A competent person decides what may be used; a report is his, and is kept as he wrote
            it.
          </p>
        </Page>
      )}
    </Loaded>
  );
}

function WorkList({ list, mayEnter }: { list: List; mayEnter: boolean }) {
  const [typed, setTyped] = useState<Readonly<Record<string, Typed>>>({});
  const [examiner, setExaminer] = useState('');
  const [file, setFile] = useState<File | null>(null);
  const client = useQueryClient();
  const filled = list.items.filter((each) => typed[each.id]?.outcome && !list.lines.some((line) => line.itemId === each.id));
  const enter = useMutation({
    mutationFn: async () => {
      const kept = file
        ? ((await sendFile(
            `/api/reports/${encodeURIComponent(filled[0]?.id ?? '')}?name=${encodeURIComponent(file.name)}`,
            file,
            file.type,
          )) as {
            id: string;
          })
        : null;
      const lines = filled.map(({ id }) => ({ itemId: id, ...(typed[id] ?? nothing) }));
      return request(enterResults, { id: list.visit.id, examiner, reportFile: kept?.id ?? null, lines });
    },
    onSuccess: async () => {
      setTyped({});
      await client.invalidateQueries({ queryKey: ['visit-list', list.visit.id] });
    },
  });
  const change = (id: string, part: Partial<Typed>) => setTyped({ ...typed, [id]: { ...(typed[id] ?? nothing), ...part } });
  return (
    <>
      {mayEnter && <ForAllLines examiner={examiner} onExaminer={setExaminer} onFile={setFile} />}
      <div {...scrolls}>
        <table className="tight blocks">
          {headings}
          <tbody>
            {list.items.map((item) => (
              <tr key={item.id}>
                <About item={item} list={list} />
                <Result
                  item={item}
                  list={list}
                  mayEnter={mayEnter}
                  typed={typed[item.id] ?? nothing}
                  change={(part) => change(item.id, part)}
                />
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {mayEnter && (
        <button type="button" className="noprint" disabled={filled.length === 0 || enter.isPending} onClick={() => enter.mutate()}>
          Record {filled.length} {filled.length === 1 ? 'result' : 'results'}
        </button>
      )}
      {enter.isSuccess && <p role="status">Recorded. What is left open stays open.</p>}
      <Faults of={enter.error} />
    </>
  );
}

const headings = (
  <thead>
    <tr>
      {Object.values(columns).map((each) => (
        <th key={each}>{each}</th>
      ))}
    </tr>
  </thead>
);

interface ForAll {
  examiner: string;
  onExaminer: (name: string) => void;
  onFile: (file: File | null) => void;
}

const ForAllLines = ({ examiner, onExaminer, onFile }: ForAll) => (
  <div className="fields noprint">
    <label>
      Examiner
      <input value={examiner} onChange={(event) => onExaminer(event.target.value)} />
    </label>
    <label>
      The report itself, for all lines (PDF, JPEG or PNG)
      <input type="file" accept="application/pdf,image/jpeg,image/png" onChange={(event) => onFile(event.target.files?.[0] ?? null)} />
    </label>
  </div>
);

function About({ item, list }: { item: List['items'][number]; list: List }) {
  const seen = list.visit.list?.find((each) => each.id === item.id);
  return (
    <>
      <td className="mono" data-name={columns.item}>
        {item.id}
      </td>
      <td data-name={columns.what}>
        {item.kind}, {item.model}
      </td>
      <td data-name={columns.where}>{item.place}</td>
      <td className="mono" data-name={columns.until}>
        {seen ? (seen.until ?? 'may not be used') : ''}
      </td>
      <td className="mono" data-name={columns.carriesTo}>
        {seen?.carriesTo}
      </td>
      <td className="mono" data-name={columns.neededOn}>
        {seen?.neededOn}
      </td>
      <td data-name={columns.every}>
        {item.intervals.map((each) => english.interval(each)).join(', ')}
        {item.rules.map((each) => (
          <small key={each} className="quiet">
            {' '}
            {each}
          </small>
        ))}
      </td>
    </>
  );
}

interface ResultProps {
  readonly item: List['items'][number];
  readonly list: List;
  readonly mayEnter: boolean;
  readonly typed: Typed;
  readonly change: (part: Partial<Typed>) => void;
}

const results = ['outcome', 'report', 'remark'] as const;

function Result({ item, list, mayEnter, typed, change }: ResultProps) {
  const line = list.lines.find((each) => each.itemId === item.id);
  if (line)
    return (
      <>
        <td data-name={columns.outcome}>{line.outcome === 'pass' ? '○ passed' : '■ failed'}</td>
        <td className="mono" data-name={columns.report}>
          {line.report}
        </td>
        <td data-name={columns.remark}>{line.remark}</td>
      </>
    );
  if (!mayEnter)
    return (
      <>
        {results.map((key) => (
          <td key={key} className="tofill" data-name={columns[key]} />
        ))}
      </>
    );
  return (
    <>
      <td className="tofill" data-name={columns.outcome}>
        <select aria-label={`Outcome of ${item.id}`} value={typed.outcome} onChange={(event) => change({ outcome: event.target.value })}>
          <option value="" />
          <option value="pass">passed</option>
          <option value="fail">failed</option>
        </select>
      </td>
      {(['report', 'remark'] as const).map((key) => (
        <td key={key} className="tofill" data-name={columns[key]}>
          <input
            aria-label={`${key === 'report' ? 'Report number' : 'Remark'} of ${item.id}`}
            value={typed[key]}
            onChange={(event) => change({ [key]: event.target.value })}
          />
        </td>
      ))}
    </>
  );
}
