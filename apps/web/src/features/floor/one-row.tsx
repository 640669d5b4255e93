import { useState } from 'react';
import { Link, useParams } from 'react-router';
import { drawRow, drawStowingStep, formatLength, formatMass, formatShort, partName, rowParts, spaceName } from '#drawings';
import { type TruckResultOne, rowKey, tapGate, tickText } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { today } from '../../platform/today.js';
import { Drawing } from '../../ui/drawing.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';
import { useBarred } from '../plan/barred-notes.js';
import { useCarts, useTruck } from '../plan/use-plan-parts.js';
import { useTicks } from '../plan/use-ticks.js';
import { FloorPage } from './floor-page.js';
import type { OnFloor } from './on-floor.js';

type Row = TruckResultOne['rows'][number];

/** A truck row by row from the nose: the next row as the loader sees it, one press when it is in; every row below, to tick or take back. */
export function OneRow(given: OnFloor) {
  const { truckId = '' } = useParams();
  const query = useTruck(given.plan.id, truckId);
  if (query.data) return <TheTruck key={truckId} given={given} truck={query.data} />;
  return (
    <FloorPage name={truckId} title={`Truck ${truckId}`} back={`${given.home}/trucks`}>
      {query.isError ? <Faults of={query.error} /> : <p className="quiet">Reading ...</p>}
    </FloorPage>
  );
}

function TheTruck({ given: { show, plan, home }, truck }: { given: OnFloor; truck: TruckResultOne }) {
  const { ticked, tick, unkept } = useTicks({ planId: plan.id, tourId: show.tourId, showId: show.showId });
  const [gates] = useState(() => ({ done: tapGate(), undo: tapGate() }));
  const isIn = (row: number) => ticked.has(tickText(rowKey(truck.id, row)));
  const set = (row: number, done: boolean) =>
    tick(tickText(rowKey(truck.id, row)), done, `${show.name}: ${truck.id} row ${row} ${done ? 'loaded' : 'not loaded after all'}`);
  const next = truck.rows.find((row) => !isIn(row.number));
  const last = truck.rows.filter((row) => isIn(row.number)).at(-1);
  const barred = useBarredPieces(plan.id, next?.pieces ?? []);
  // Home it goes with whatever is wrong with it.
  const stops = today() <= plan.show.from ? barred : [];
  const done = (at: number) => {
    if (gates.done(at) && next) set(next.number, true);
  };
  const undo = (at: number) => {
    gates.done(at);
    if (gates.undo(at) && last) set(last.number, false);
  };
  return (
    <FloorPage
      name={spaceName(truck)}
      title={
        next
          ? `${spaceName(truck)}: ${partName(truck)} ${next.number} of ${truck.rows.length}`
          : `${spaceName(truck)}: all ${truck.rows.length} ${partName(truck)}s are in`
      }
      back={`${home}/trucks`}
      foot={<WayOn last={last} next={next} isStopped={stops.length > 0} trucks={`${home}/trucks`} onDone={done} onUndo={undo} />}
    >
      <Faults of={unkept} />
      {stops.map((sentence) => (
        <Note key={sentence} weight="stop">
          {sentence} This row does not go on the truck.
        </Note>
      ))}
      {next && <TheRow truck={truck} row={next} />}
      <Rows truck={truck} isIn={isIn} onTick={set} />
      <p>
        <Link className="btn plain" to={`/tours/${show.tourId}/shows/${show.showId}/trucks/${encodeURIComponent(truck.id)}`}>
          Loaded differently, axles, unloading
        </Link>
      </p>
    </FloorPage>
  );
}

interface WayOnProps {
  readonly last: Row | undefined;
  readonly next: Row | undefined;
  readonly isStopped: boolean;
  readonly trucks: string;
  readonly onDone: (at: number) => void;
  readonly onUndo: (at: number) => void;
}

function WayOn({ last, next, isStopped, trucks, onDone, onUndo }: WayOnProps) {
  return (
    <>
      {last ? (
        <div className="taken">
          <span>Row {last.number} is in: noted</span>
          <button type="button" onClick={(event) => onUndo(event.timeStamp)}>
            Undo
          </button>
        </div>
      ) : (
        <div className="taken none">Nothing to take back</div>
      )}
      {next ? (
        <button type="button" className="big" disabled={isStopped} onClick={(event) => onDone(event.timeStamp)}>
          Row {next.number} is in
        </button>
      ) : (
        <Link className="btn big" to={trucks}>
          All rows are in: the next truck
        </Link>
      )}
    </>
  );
}

/** What of these pieces must not fly, what rides in their carts with it. */
function useBarredPieces(planId: string, pieces: readonly string[]): readonly string[] {
  const { items } = useBarred(planId);
  const loads = useCarts(planId).data?.loads ?? [];
  const against = items.filter(
    ({ itemId, loads: barred }) =>
      pieces.includes(itemId) || loads.some((load) => barred.includes(load.id) && pieces.includes(load.cart ?? '')),
  );
  return [...new Set(against.map((each) => each.sentence))];
}

function TheRow({ truck, row }: { truck: TruckResultOne; row: Row }) {
  const { units } = useSettings();
  const parts = rowParts(truck, row.pieces);
  return (
    <>
      <Drawing of={truck.kind ? drawStowingStep(truck, truck.rows.indexOf(row)) : drawRow(truck, row)} />
      <div className="answer" role="status">
        {parts.map(({ what, pieces }) => (
          <div key={what}>
            <span className="mono">{pieces.map(({ id, more }) => `${id}${more}`).join(', ')}</span> {what}
          </div>
        ))}
        <p>
          Left to right, {formatMass(row.massKg, units)}.
          {row.barAtMm !== null && ` Bar at ${formatLength(row.barAtMm, units)} from the nose.`}
          {(row.gapAheadMm ?? 0) > 50 && ` ${formatShort(row.gapAheadMm ?? 0, units)} free ahead of it: block or bar.`}
          {row.gapAcrossMm > 250 && ` ${formatShort(row.gapAcrossMm, units)} free across: block or strap.`}
        </p>
      </div>
    </>
  );
}

interface RowsProps {
  readonly truck: TruckResultOne;
  readonly isIn: (row: number) => boolean;
  readonly onTick: (row: number, done: boolean) => void;
}

function Rows({ truck, isIn, onTick }: RowsProps) {
  return (
    <details>
      <summary>All rows</summary>
      <ul className="pieces">
        {truck.rows.map((row) => (
          <li key={row.number}>
            <label>
              <input
                type="checkbox"
                aria-label={`Row ${row.number} is in`}
                checked={isIn(row.number)}
                onChange={(event) => onTick(row.number, event.target.checked)}
              />
              <span>
                <b>{row.number}</b> <span className="mono">{row.pieces.join(', ')}</span>
              </span>
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
}
