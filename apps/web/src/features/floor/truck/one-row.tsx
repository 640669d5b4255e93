import { useState } from 'react';
import { Link, useParams } from 'react-router';
import { drawRow, drawStowingStep, formatLength, formatMass, formatShort, partName, rowParts, spaceName } from '#drawings';
import { type RowWay, type TruckResultOne, rowKey, tapGate, tickText } from '#pack-plan';
import { useSettings } from '../../../platform/settings.js';
import { today } from '../../../platform/today.js';
import { Drawing } from '../../../ui/drawing.js';
import { Faults } from '../../../ui/faults.js';
import { Note } from '../../../ui/notes.js';
import { useBarred } from '../../plan/barred-notes.js';
import { useCarts, useTruck } from '../../plan/use-plan-parts.js';
import { useTicks } from '../../plan/use-ticks.js';
import { ByCode, useCommands } from '../page/by-code.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { signal } from '../page/signal.js';
import { StaysAwake } from '../page/stays-awake.js';
import { AxlesAfter } from './axles-after.js';
import { rowsInOrder, searchOf, useRowWay, wayWords } from './row-way.js';

type Row = TruckResultOne['rows'][number];

/** A truck row by row, in, off or in for home: the next row as the loader sees it, one press when it is done; every row below, to tick or take back. */
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

function TheTruck({ given: { show, plan, home, told }, truck }: { given: OnFloor; truck: TruckResultOne }) {
  const way = useRowWay();
  const { ticked, tick, unkept } = useTicks({ planId: plan.id, tourId: show.tourId, showId: show.showId });
  const [gates] = useState(() => ({ done: tapGate(), undo: tapGate() }));
  const words = wayWords[way];
  const keyOf = (row: number) => tickText(rowKey(truck.id, row, way));
  const isDone = ({ number }: Row) => ticked.has(keyOf(number));
  const set = (row: number, done: boolean) =>
    tick(keyOf(row), done, `${show.name}: ${truck.id} row ${row} ${done ? words.told : words.untold}`);
  const rows = rowsInOrder(truck, way);
  const next = rows.find((row) => !isDone(row));
  const last = rows.filter(isDone).at(-1);
  const barred = useBarredPieces(plan.id, next?.pieces ?? []);
  // Off it comes, and home it goes, with whatever is wrong with it.
  const stops = way === 'row' && today() <= plan.show.from ? barred : [];
  const done = (at: number) => {
    if (gates.done(at) && next) set(next.number, true);
  };
  const undo = (at: number) => {
    gates.done(at);
    if (gates.undo(at) && last) set(last.number, false);
  };
  const command = useCommands({ home, done: (at) => (stops.length === 0 ? done(at) : signal(false)), undo });
  const trucks = `${home}/trucks${searchOf(way)}`;
  const left = rows.filter((row) => !isDone(row)).length;
  return (
    <FloorPage
      name={`${spaceName(truck)}, ${words.name.toLowerCase()}`}
      title={titleOf(truck, way, next, rows.length)}
      back={trucks}
      foot={<WayOn {...{ last, next, way, trucks }} isStopped={stops.length > 0} onDone={done} onUndo={undo} />}
    >
      <Faults of={unkept} />
      {told?.load === truck.id && <Note weight={told.weight}>{told.sentence}</Note>}
      {stops.map((sentence) => (
        <Note key={sentence} weight="stop">
          {sentence} This row does not go on the truck.
        </Note>
      ))}
      {next && <TheRow truck={truck} row={next} />}
      {next && rows.every((row, index) => row.number === index + 1) && <AxlesAfter truck={truck} row={next.number} />}
      {next && way === 'row' && !truck.kind && (
        <p className="row">
          <Link className="btn plain" to={`${home}/trucks/${encodeURIComponent(truck.id)}/differently?row=${next.number}`}>
            Loaded differently, or something stays behind
          </Link>
        </p>
      )}
      <Rows rows={rows} words={words.done} left={left} isDone={isDone} onTick={set} />
      <p>
        <Link className="btn plain" to={`/tours/${show.tourId}/shows/${show.showId}/trucks/${encodeURIComponent(truck.id)}`}>
          Whole truck: axles, order, wishes
        </Link>
      </p>
      <ByCode onCommand={command} />
      <StaysAwake />
    </FloorPage>
  );
}

function titleOf(truck: TruckResultOne, way: RowWay, next: Row | undefined, of: number): string {
  const name = way === 'row' ? spaceName(truck) : `${wayWords[way].name} ${truck.id}`;
  const part = partName(truck);
  return next ? `${name}: ${part} ${next.number} of ${of}` : `${name}: all ${of} ${part}s are ${way === 'unload' ? 'off' : 'in'}`;
}

interface WayOnProps {
  readonly last: Row | undefined;
  readonly next: Row | undefined;
  readonly way: RowWay;
  readonly isStopped: boolean;
  readonly trucks: string;
  readonly onDone: (at: number) => void;
  readonly onUndo: (at: number) => void;
}

function WayOn({ last, next, way, isStopped, trucks, onDone, onUndo }: WayOnProps) {
  const { done } = wayWords[way];
  return (
    <>
      {last ? (
        <div className="taken">
          <span>
            Row {last.number} {done}: noted
          </span>
          <button type="button" onClick={(event) => onUndo(event.timeStamp)}>
            Undo
          </button>
        </div>
      ) : (
        <div className="taken none">Nothing to take back</div>
      )}
      {next ? (
        <button type="button" className="big" disabled={isStopped} onClick={(event) => onDone(event.timeStamp)}>
          Row {next.number} {done}
        </button>
      ) : (
        <Link className="btn big" to={trucks}>
          All rows are {way === 'unload' ? 'off' : 'in'}: the next truck
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
  readonly rows: readonly Row[];
  /** Of a row that is done. */
  readonly words: string;
  readonly left: number;
  readonly isDone: (row: Row) => boolean;
  readonly onTick: (row: number, done: boolean) => void;
}

function Rows({ rows, words, left, isDone, onTick }: RowsProps) {
  return (
    <details>
      <summary>All rows, {left} left</summary>
      <ul className="pieces">
        {rows.map((row) => (
          <li key={row.number}>
            <label>
              <input
                type="checkbox"
                aria-label={`Row ${row.number} ${words}`}
                checked={isDone(row)}
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
