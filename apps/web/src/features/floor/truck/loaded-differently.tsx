import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useNavigate, useParams, useSearchParams } from 'react-router';
import { type TruckResultOne, rowKey, tickText } from '#pack-plan';
import { request } from '../../../platform/request.js';
import { Faults } from '../../../ui/faults.js';
import { Note } from '../../../ui/notes.js';
import { UnderWay } from '../../../ui/under-way.js';
import { useTruck } from '../../plan/use-plan-parts.js';
import { useTicks } from '../../plan/use-ticks.js';
import { Answer } from '../../truck/loading-answer.js';
import { leavePieceMutation, rowSwapQuery, swapRowsMutation } from '../../truck/operations.js';
import { type LoadingActs, useLoadingAct } from '../../truck/use-loading-act.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';

/** It was loaded otherwise than planned, or something does not travel: what is in stays, and a new draft is made around it. */
export function LoadedDifferently(given: OnFloor) {
  const { truckId = '' } = useParams();
  const row = Number(useSearchParams()[0].get('row'));
  const query = useTruck(given.plan.id, truckId);
  const truck = query.data;
  // Asked for here, where it outlives the plan that it replaces.
  const acts = useWish(given, truckId);
  const at = truck?.rows.find((each) => each.number === row);
  if (truck && at) return <Choose given={given} truck={truck} row={at} acts={acts} />;
  return (
    <FloorPage name="Loaded differently" title="Loaded differently" back={`${given.home}/trucks/${encodeURIComponent(truckId)}`}>
      {query.isError ? <Faults of={query.error} /> : <p className="quiet">{truck ? 'There is no such row any more.' : 'Reading ...'}</p>}
    </FloorPage>
  );
}

/** What came of it is said at the truck. */
function useWish({ home, tell }: OnFloor, truckId: string): LoadingActs {
  const navigate = useNavigate();
  const back = `${home}/trucks/${encodeURIComponent(truckId)}`;
  return useLoadingAct((changes) => {
    const moved =
      changes.length === 0 ? 'Nothing else moves.' : `${changes.slice(0, 4).join(' ')}${changes.length > 4 ? ' And more.' : ''}`;
    tell({
      load: truckId,
      weight: 'look',
      sentence: `A draft was made around what is in. ${moved} It counts once the system tech has released it.`,
    });
    void navigate(back, { replace: true });
  });
}

type Row = TruckResultOne['rows'][number];
interface ChooseProps {
  readonly given: OnFloor;
  readonly truck: TruckResultOne;
  readonly row: Row;
  readonly acts: LoadingActs;
}

function Choose({ given, truck, row, acts }: ChooseProps) {
  const { show, plan, home, me } = given;
  const { ticked } = useTicks({ planId: plan.id, tourId: show.tourId, showId: show.showId });
  const open = truck.rows.filter((each) => each !== row && !ticked.has(tickText(rowKey(truck.id, each.number))));
  const [other, setOther] = useState<number | null>(null);
  const [piece, setPiece] = useState<string | null>(null);
  const back = `${home}/trucks/${encodeURIComponent(truck.id)}`;
  return (
    <FloorPage
      name={`${truck.id}, row ${row.number}: loaded differently`}
      title={`${truck.id}, row ${row.number}`}
      back={back}
      foot={
        <Link className="btn plain" to={back}>
          Back to the truck
        </Link>
      }
    >
      {acts.isPending && <UnderWay job={acts.job} onCancel={acts.cancel} of="Planning around what is in" />}
      <Faults of={acts.error} />
      {acts.data && <Answer of={acts.data} />}
      {me.role === 'safety' && <p className="quiet">The warehouse and the system tech change the load.</p>}
      {me.role !== 'safety' && other === null && piece === null && (
        <>
          <h2>What is different?</h2>
          {row.pieces.map((id) => (
            <button key={id} type="button" className="job plain pick" onClick={() => setPiece(id)}>
              <b className="mono">{id}</b>
              <span>stays behind</span>
            </button>
          ))}
          {open.map((each) => (
            <button key={each.number} type="button" className="job plain pick" onClick={() => setOther(each.number)}>
              <b>Row {each.number} stands here</b>
              <span>{each.pieces.join(', ')}</span>
            </button>
          ))}
        </>
      )}
      {piece !== null && <StaysBehind planId={plan.id} piece={piece} acts={acts} />}
      {other !== null && <OtherRow planId={plan.id} truck={truck.id} first={row.number} second={other} acts={acts} />}
    </FloorPage>
  );
}

function StaysBehind({ planId, piece, acts }: { planId: string; piece: string; acts: LoadingActs }) {
  const [reason, setReason] = useState('');
  return (
    <>
      <h2>Why does {piece} stay behind?</h2>
      <label>
        Why
        <input value={reason} maxLength={300} onChange={(event) => setReason(event.target.value)} />
      </label>
      <p className="row">
        <button
          type="button"
          disabled={reason.trim() === '' || acts.isPending}
          onClick={() =>
            acts.mutate(async (requestId) => (await request(leavePieceMutation, { planId, piece, reason }, { requestId })).leavePiece)
          }
        >
          Plan without {piece}
        </button>
      </p>
    </>
  );
}

interface OtherRowProps {
  readonly planId: string;
  readonly truck: string;
  readonly first: number;
  readonly second: number;
  readonly acts: LoadingActs;
}

/** What two exchanged rows do is said before they are. */
function OtherRow({ planId, truck, first, second, acts }: OtherRowProps) {
  const [reason, setReason] = useState('');
  const query = useQuery({
    queryKey: ['row swap', planId, truck, first, second],
    queryFn: async () => (await request(rowSwapQuery, { planId, truck, first, second })).rowSwap,
  });
  const breaches = query.data?.breaches ?? [];
  const isHard = breaches.some((each) => !each.mayBeWaived);
  const exchange = () =>
    acts.mutate(
      async (requestId) =>
        (await request(swapRowsMutation, { planId, truck, first, second, reason: breaches.length > 0 ? reason : null }, { requestId }))
          .swapRows,
    );
  return (
    <>
      <h2>
        Row {second} where row {first} was planned
      </h2>
      {query.isError && <Faults of={query.error} />}
      {!query.data && !query.isError && <p className="quiet">Reading what that does ...</p>}
      {query.data && breaches.length === 0 && <Note weight="agrees">No rule is broken.</Note>}
      {breaches.slice(0, 6).map((each) => (
        <Note key={each.sentence} weight={each.mayBeWaived ? 'look' : 'stop'}>
          {each.sentence}
        </Note>
      ))}
      {isHard && <p>It may not stay like that: take it out again, or ask the system tech.</p>}
      {breaches.length > 0 && !isHard && (
        <label>
          Why they need not come off in their turn
          <input value={reason} maxLength={300} onChange={(event) => setReason(event.target.value)} />
        </label>
      )}
      {query.data && !isHard && (
        <p className="row">
          <button type="button" disabled={acts.isPending || (breaches.length > 0 && reason.trim() === '')} onClick={exchange}>
            Plan around it
          </button>
        </p>
      )}
    </>
  );
}
