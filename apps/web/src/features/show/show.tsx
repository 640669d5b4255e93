import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useParams } from 'react-router';
import { type Person, actsAsOfficer } from '../../platform/person.js';
import { drawCart, drawHang } from '#drawings';
import { usePlanning } from '../../platform/planning.js';
import { type AnswerOf, request } from '../../platform/request.js';
import { useSettings } from '../../platform/settings.js';
import { dayOf } from '../../platform/written.js';
import { Drawing } from '../../ui/drawing.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page } from '../../ui/page.js';
import { PlannedByOthers } from './planned-by-others.js';
import { UnderWay } from '../../ui/under-way.js';
import { OutsideFields, isWhole, nobodyOutside } from '../plan/outside-fields.js';
import { differenceQuery, makePlan, releasePlan } from '../plan/operations.js';
import { BarredNotes, DoneNotes } from '../plan/barred-notes.js';
import { CartsPart } from './carts-part.js';
import { DuePart } from './due-part.js';
import { HangParts } from './hang-parts.js';
import { HardwarePart } from './hardware-part.js';
import { Improvement } from './improvement.js';
import { LetAllGo } from '../truck/let-all-go.js';
import { LongerSearch } from './longer-search.js';
import { SwapBox } from './swap-box.js';
import { TruckPart } from './truck-part.js';
import { useCarts, usePicks } from '../plan/use-plan-parts.js';
import { sentencesOf } from '../plan/sentences-of.js';
import { type PlanInForce, type ShowData, useShow } from '../plan/use-show.js';

/** One sheet a show: what hangs, what it rides in, what holds it, what carries it, what is in date. */
export function Show({ me }: { me: Person }) {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const [wantsDraft, setWantsDraft] = useState(false);
  return (
    <Loaded query={query}>
      {(data) => {
        const shown = wantsDraft && data.draft ? data.draft : data.inForce;
        return (
          <Page
            title={data.name}
            lede={<Lede data={data} shown={shown} />}
            actions={<Actions data={data} shown={shown} me={me} onDraft={setWantsDraft} />}
          >
            {shown ? (
              <Sheet data={data} shown={shown} me={me} onDraft={setWantsDraft} />
            ) : (
              <p>
                There is no plan yet.{' '}
                {me.role === 'safety'
                  ? 'The system tech makes it.'
                  : 'Make it from the design, the register and the floor as they now are.'}
              </p>
            )}
          </Page>
        );
      }}
    </Loaded>
  );
}

function Lede({ data, shown }: { data: ShowData; shown: PlanInForce | null }) {
  if (!shown) return <>{data.tourName}</>;
  const { show } = shown;
  return (
    <>
      <Link to={`/tours/${data.tourId}`}>{data.tourName}</Link> · show {show.number} of {show.of} · {show.venue},{' '}
      {show.from === show.to ? show.from : `${show.from} to ${show.to}`} ·{' '}
      <span className="rev">{shown.revision ? `Revision ${shown.revision}` : 'Draft'}</span>{' '}
      {shown.releasedAt
        ? `released ${dayOf(shown.releasedAt)} by ${shown.releasedBy}${shown.releasedDespite ? `, although it says stop: ${shown.releasedDespite}` : ''}`
        : `made ${dayOf(shown.madeAt)} by ${shown.madeBy}, not released`}
    </>
  );
}

function Actions({
  data,
  shown,
  me,
  onDraft,
}: {
  data: ShowData;
  shown: PlanInForce | null;
  me: Person;
  onDraft: (wants: boolean) => void;
}) {
  const client = useQueryClient();
  const base = `/tours/${data.tourId}/shows/${data.showId}`;
  const make = usePlanning<AnswerOf<typeof makePlan>['makePackPlan']>({
    onAnswer: async (answer) => {
      if (answer.__typename !== 'PlanMade') return;
      await client.invalidateQueries();
      onDraft(true);
    },
  });
  const makeIt = () =>
    make.mutate(async (requestId) => (await request(makePlan, { tourId: data.tourId, showId: data.showId }, { requestId })).makePackPlan);
  const [despite, setDespite] = useState('');
  const [second, setSecond] = useState(nobodyOutside);
  const release = useMutation({
    mutationFn: () =>
      request(releasePlan, { planId: data.draft!.id, despite: despite.trim() || null, countersign: isWhole(second) ? second : null }),
    onSuccess: async (answer) => {
      if (answer.releasePackPlan.__typename === 'PlanView') onDraft(false);
      await client.invalidateQueries();
    },
  });
  const refusal = release.data && release.data.releasePackPlan.__typename !== 'PlanView' ? release.data.releasePackPlan : undefined;
  const print = `/print/${data.tourId}/${data.showId}`;
  const mayRelease = (me.role !== 'warehouse' || actsAsOfficer(me)) && data.draft !== null;
  return (
    <>
      {shown && (
        <Link className="btn" to={`${print}/carts`} target="_blank">
          Print cart cards
        </Link>
      )}
      {shown && (
        <Link className="btn plain" to={`/floor/${data.tourId}/${data.showId}`}>
          To the floor
        </Link>
      )}
      {shown && (
        <Link className="btn plain" to={`${base}/print`}>
          Print a sheet
        </Link>
      )}
      {shown && me.role !== 'warehouse' && (
        <Link className="btn plain" to={`${print}/inspection`} target="_blank">
          Print the inspection file
        </Link>
      )}
      {me.role === 'system' && (
        <Link className="btn plain" to={`${base}/hangs`}>
          Change the hangs
        </Link>
      )}
      {me.role === 'system' && (
        <Link className="btn plain" to={`${base}/change`}>
          Change or copy the show
        </Link>
      )}
      {me.role !== 'safety' && (
        <button type="button" className="plain" disabled={make.isPending} onClick={makeIt}>
          {make.isPending ? 'Planning ...' : shown ? 'Plan again' : 'Make the plan'}
        </button>
      )}
      {mayRelease && (
        <button type="button" disabled={release.isPending} onClick={() => release.mutate()}>
          Release as revision {nextLetter(data.revisions.length)}
        </button>
      )}
      {mayRelease && (
        <details>
          <summary>{isWhole(second) ? `Countersigned by ${second.name}` : 'A second person from outside countersigns the release'}</summary>
          <div className="fields">
            <OutsideFields of={second} onChange={setSecond} />
          </div>
        </details>
      )}
      {make.isPending && <UnderWay job={make.job} onCancel={make.cancel} of="Planning" />}
      {!make.isPending && <PlannedByOthers tourId={data.tourId} showId={data.showId} />}
      {make.data?.__typename === 'PlanningRefusal' && <Note weight="look">{make.data.sentence}</Note>}
      <Faults of={make.error ?? release.error} />
      {refusal && <Note weight="stop">{refusal.sentence}</Note>}
      {refusal?.__typename === 'StopRefusal' && (
        <>
          <ul>
            {refusal.stops.map((each, index) => (
              <li key={index}>{each.sentence}</li>
            ))}
          </ul>
          {(!refusal.needsOfficer || actsAsOfficer(me)) && (
            <>
              <label>
                Why it is released all the same
                <input value={despite} onChange={(event) => setDespite(event.target.value)} />
              </label>
              <button type="button" disabled={despite.trim() === '' || release.isPending} onClick={() => release.mutate()}>
                Release despite this
              </button>
            </>
          )}
        </>
      )}
    </>
  );
}

const nextLetter = (index: number): string =>
  index < 26 ? String.fromCharCode(65 + index) : nextLetter(Math.floor(index / 26) - 1) + String.fromCharCode(65 + (index % 26));

function Sheet({ data, shown, me, onDraft }: { data: ShowData; shown: PlanInForce; me: Person; onDraft: (wants: boolean) => void }) {
  const base = `/tours/${data.tourId}/shows/${data.showId}`;
  return (
    <>
      {shown.state === 'released' ? <BarredNotes planId={shown.id} me={me} /> : <DoneNotes planId={shown.id} me={me} />}
      {shown.changed.length > 0 && (
        <Note weight="look">
          This {shown.revision ? `revision ${shown.revision}` : 'draft'} is stale: {sentencesOf(shown.changed.slice(0, 6))}
          {shown.changed.length > 6 ? ` and ${shown.changed.length - 6} more` : ''}. Plan again to follow.
        </Note>
      )}
      {data.released && data.draft && (
        <p>
          {shown === data.draft ? 'You see the draft. ' : 'There is a newer draft. '}
          <button type="button" className="plain small" onClick={() => onDraft(shown !== data.draft)}>
            {shown === data.draft ? `Show revision ${data.released.revision}` : 'Show the draft'}
          </button>
        </p>
      )}
      <Changes data={data} />
      <Improvement
        key={shown.id}
        planId={shown.id}
        replaces={data.draft !== null && shown !== data.draft}
        mayTake={me.role !== 'safety'}
        onDraft={() => onDraft(true)}
      />
      <HangParts planId={shown.id} hangs={shown.hangs} base={base} />
      <CartsPart planId={shown.id} base={base} />
      {me.role !== 'safety' && <SwapBox planId={shown.id} base={base} onDraft={onDraft} />}
      <HardwarePart planId={shown.id} base={base} />
      <TruckPart planId={shown.id} trucks={shown.trucks} base={base} search={shown === data.draft && data.released ? '?plan=draft' : ''}>
        {me.role !== 'safety' && <LetAllGo planId={shown.id} onDraft={() => onDraft(true)} />}
        {me.role !== 'safety' && <LongerSearch tourId={data.tourId} showId={data.showId} />}
      </TruckPart>
      <DuePart planId={shown.id} tourId={data.tourId} />
    </>
  );
}

/** Carts and hangs in which a place holds another box than before, those places hatched. */
function ChangedDrawings({ plan, boxes }: { plan: PlanInForce; boxes: readonly { readonly hang: string; readonly position: number }[] }) {
  const { units } = useSettings();
  const carts = useCarts(plan.id);
  const picks = usePicks(plan.id, plan.hangs);
  const isChanged = (hang: string, position: number) => boxes.some((each) => each.hang === hang && each.position === position);
  if (!carts.data || !picks.data) return null;
  const loads = carts.data.loads
    .map((load) => ({ load, slots: new Set(load.boxes.filter((box) => isChanged(load.hang, box.position)).map((box) => box.slot)) }))
    .filter(({ slots }) => slots.size > 0);
  if (loads.length === 0) return null;
  const hangs = picks.data.hangs.filter((hang) => boxes.some((each) => each.hang === hang.hang));
  return (
    <>
      <p>Hatched: another box than before.</p>
      <div className="carts">
        {loads.map(({ load, slots }) => (
          <figure key={load.id}>
            <Drawing of={drawCart(load, slots)} />
            <figcaption>
              {load.id}, {load.cart ?? 'no cart'}
            </figcaption>
          </figure>
        ))}
        {hangs.map((hang) => (
          <figure key={hang.hang}>
            <Drawing of={drawHang(hang, units, new Set(boxes.filter((each) => each.hang === hang.hang).map((each) => each.position)))} />
            <figcaption>{hang.name}</figcaption>
          </figure>
        ))}
      </div>
    </>
  );
}

/** From the revision before to the one in force, or from the one in force to the draft. */
function Changes({ data }: { data: ShowData }) {
  const released = data.released;
  const [from, to] = released && data.draft ? [released.id, data.draft.id] : [data.revisions.at(-2)?.id, released?.id];
  const query = useQuery({
    queryKey: ['difference', from, to],
    queryFn: () => request(differenceQuery, { from: from!, to: to! }),
    enabled: Boolean(from && to),
  });
  if (!from || !to) return null;
  const title =
    data.draft && released
      ? `What the draft changes from revision ${released.revision}`
      : `What changed since revision ${data.revisions.at(-2)?.revision}`;
  return (
    <details>
      <summary>{title}</summary>
      <div className="working">
        <Loaded query={query}>
          {({ planDifference: { sentences, boxes } }) =>
            sentences.length === 0 ? (
              <p>Nothing that can be seen on the floor.</p>
            ) : (
              <>
                <ul>
                  {sentences.map((each, index) => (
                    <li key={index}>{each}</li>
                  ))}
                </ul>
                <ChangedDrawings plan={(data.draft ?? data.released)!} boxes={boxes} />
              </>
            )
          }
        </Loaded>
      </div>
    </details>
  );
}
