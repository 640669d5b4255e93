import { Suspense, lazy, useState } from 'react';
import { Link, useParams, useSearchParams } from 'react-router';
import type { Person } from '../../platform/person.js';
import { dockSentence, drawTruckPlan, drawTruckSide, formatMass, orderSteps, partName, spaceName } from '#drawings';
import { type TruckResultOne, type TrucksHead, rowKey, tickText } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { Faults } from '../../ui/faults.js';
import { Findings } from '../../ui/findings.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { useFindings, useTruck, useTruckHead } from '../plan/use-plan-parts.js';
import { sentencesOf } from '../plan/sentences-of.js';
import { type PlanInForce, type ShowData, useShow } from '../plan/use-show.js';
import { useTicks } from '../plan/use-ticks.js';
import { AxlePart } from './axle-part.js';
import { LoadingPart } from './loading-part.js';
import { RowTable } from './row-table.js';
import { StowagePart, StowingSteps } from './stowage-part.js';
import { useLoadingAct } from './use-loading-act.js';

const TruckSpace = lazy(() => import('./truck-space.js'));

/** One truck for the loader: rows from the nose with ticks, what may be changed at the dock, then from the door at the venue and back. */
export function TruckScreen({ me }: { me: Person }) {
  const { tourId = '', showId = '', truckId = '' } = useParams();
  const [search] = useSearchParams();
  const query = useShow(tourId, showId);
  return (
    <Loaded query={query}>
      {(data) => {
        const shown = search.get('plan') === 'draft' && data.draft ? data.draft : data.inForce;
        if (!shown?.trucks.includes(truckId)) return <Page title={truckId}>This truck is in no plan of the show.</Page>;
        return <TruckOf me={me} data={data} shown={shown} truckId={truckId} />;
      }}
    </Loaded>
  );
}

function TruckOf({ me, data, shown, truckId }: { me: Person; data: ShowData; shown: PlanInForce; truckId: string }) {
  const query = useTruck(shown.id, truckId);
  const head = useTruckHead(shown.id);
  return (
    <Loaded query={head}>
      {(all) => <Loaded query={query}>{(truck) => <Truck me={me} data={data} shown={shown} head={all} truck={truck} />}</Loaded>}
    </Loaded>
  );
}

interface TruckProps {
  readonly me: Person;
  readonly data: ShowData;
  readonly shown: PlanInForce;
  readonly head: TrucksHead;
  readonly truck: TruckResultOne;
}

function Truck({ me, data, shown, head, truck }: TruckProps) {
  const { units } = useSettings();
  const [, setSearch] = useSearchParams();
  const [turnable, setTurnable] = useState(false);
  const { ticked, tick, unkept } = useTicks({ planId: shown.id, tourId: data.tourId, showId: data.showId });
  const findings = useFindings(shown.id).data ?? [];
  const acts = useLoadingAct(() => setSearch({ plan: 'draft' }, { replace: true }));
  const isDraft = shown === data.draft && data.released !== null;
  const done = new Set(truck.rows.filter((row) => ticked.has(tickText(rowKey(truck.id, row.number)))).map((row) => row.number));
  const dock = dockSentence(head);
  return (
    <Page
      title={spaceName(truck)}
      lede={
        <>
          <Link to={`/tours/${data.tourId}/shows/${data.showId}`}>{data.name}</Link> · {done.size} of {truck.rows.length} {partName(truck)}s
          loaded · {formatMass(truck.massKg, units)} ·{' '}
          <span className="rev">{shown.revision ? `Revision ${shown.revision}` : 'Draft'}</span>
        </>
      }
      actions={
        <Link className="btn plain" to={`/print/${data.tourId}/${data.showId}/trucks${isDraft ? '?plan=draft' : ''}`} target="_blank">
          Print the truck sheets
        </Link>
      }
    >
      {data.released && data.draft && (
        <p>
          {isDraft ? 'You see the draft. ' : 'There is a newer draft. '}
          <button type="button" className="plain small" onClick={() => setSearch(isDraft ? {} : { plan: 'draft' }, { replace: true })}>
            {isDraft ? `Show revision ${data.released.revision}` : 'Show the draft'}
          </button>
        </p>
      )}
      {shown.changed.length > 0 && <Note weight="look">Stale: {sentencesOf(shown.changed.slice(0, 3))}. Plan again to follow.</Note>}
      {dock && <p>{dock}</p>}
      <Part number={1} title="Load from the nose" margin={<Findings findings={findings} section="truck" />}>
        <Drawing of={drawTruckPlan(truck, done)} wide />
        <Drawing of={drawTruckSide(truck)} wide />
        {(truck.kept?.length ?? 0) > 0 && <p className="quiet">Thick edge: stays where it stands.</p>}
        <p className="floor">
          <button type="button" className="plain" aria-expanded={turnable} onClick={() => setTurnable(!turnable)}>
            {turnable ? 'Put the turnable view away' : 'Turn the load in three dimensions'}
          </button>
        </p>
        {turnable && (
          <Suspense fallback={<p className="quiet">Reading the turnable view ...</p>}>
            <TruckSpace truck={truck} />
          </Suspense>
        )}
        <Faults of={unkept} />
        {truck.kind && <StowingSteps truck={truck} done={done} />}
        <RowTable
          truck={truck}
          done={done}
          planId={shown.id}
          acts={me.role === 'safety' || truck.kind ? null : acts}
          onTick={(row, isDone) =>
            tick(
              tickText(rowKey(truck.id, row)),
              isDone,
              `${data.name}: ${truck.id} row ${row} ${isDone ? 'loaded' : 'not loaded after all'}`,
            )
          }
        />
      </Part>
      {me.role !== 'safety' && !truck.kind && (
        <LoadingPart head={head} trucks={shown.trucks} planId={shown.id} truck={truck} loadedRows={done.size} acts={acts} />
      )}
      {truck.kind ? (
        <StowagePart truck={truck} caution={head.caution} />
      ) : (
        <>
          <Part number={3} title="Unload from the door">
            <Steps truck={truck} order={truck.unloadingOrder} />
          </Part>
          <Part number={4} title="At the load-out: what goes in first">
            <Steps truck={truck} order={truck.loadOutOrder ?? truck.loadingOrder} />
          </Part>
          <AxlePart truck={truck} caution={head.caution} />
        </>
      )}
    </Page>
  );
}

function Steps({ truck, order }: { truck: TruckResultOne; order: readonly string[] }) {
  const rowOf = new Map(truck.rows.flatMap((row) => row.pieces.map((id) => [id, row.number] as const)));
  return (
    <ol>
      {orderSteps(truck, order).map(({ what, pieces }, index) => {
        const rows = [...new Set(pieces.map((id) => rowOf.get(id)))];
        return (
          <li key={index}>
            {what}:{' '}
            {pieces.map((id, at) => (
              <span key={id}>
                {at > 0 && ', '}
                <span className="mono nobreak">{id}</span>
              </span>
            ))}{' '}
            <span className="quiet">
              ({rows.length === 1 ? 'row' : 'rows'} {rows.join(', ')})
            </span>
          </li>
        );
      })}
    </ol>
  );
}
