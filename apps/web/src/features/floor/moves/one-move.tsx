import { useState } from 'react';
import { Link } from 'react-router';
import { drawMove } from '#drawings';
import { type Floor, type MoveMade, type WorkList, tapGate } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { Drawing } from '../../../ui/drawing.js';
import { Faults } from '../../../ui/faults.js';
import { Note } from '../../../ui/notes.js';
import { ByCode, useCommands } from '../page/by-code.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { useFloorWork } from './use-floor-work.js';
import { useMadeHere } from './use-made-here.js';

/** One box move at a time: drawn, done with one press, taken back with another. */
export function OneMove({ me, show, plan, home }: OnFloor) {
  const query = useFloorWork(plan.id);
  const outbox = useOutbox();
  const made = useMadeHere(plan.id);
  const [unkept, setUnkept] = useState<unknown>(null);
  const [gates] = useState(() => ({ done: tapGate(), undo: tapGate() }));
  const work = query.data;
  const next = work?.left[0];
  const put = (kind: 'move' | 'undo', { box, from, to }: MoveMade) => {
    const words =
      kind === 'move' ? `${show.name}: ${box} moved from ${from} to ${to}` : `${show.name}: ${box} back from ${to} to ${from}, taken back`;
    setUnkept(null);
    outbox
      .put({ kind, values: { planId: plan.id, box, from, to }, words, tourId: show.tourId, showId: show.showId })
      .catch((fault: unknown) => {
        setUnkept(fault);
        made.unmade(kind, { box, from, to });
      });
  };
  const done = (at: number) => {
    if (!gates.done(at) || !next) return;
    made.add({ box: next.box, from: next.from, to: next.to });
    put('move', next);
  };
  const undo = (at: number) => {
    // What follows under the same finger belongs to this tap as well.
    gates.done(at);
    if (!gates.undo(at) || !made.last) return;
    put('undo', made.last);
    made.takeLast();
  };
  const command = useCommands({ home, done, undo, isLooking: me.role === 'safety' });
  return (
    <FloorPage
      name="Box moves"
      title={work ? `Box moves: ${work.left.length} left` : 'Box moves'}
      back={home}
      foot={
        <>
          {me.role !== 'safety' && next && <Otherwise move={next} home={home} />}
          {me.role !== 'safety' && <TakenBack last={made.last} onUndo={undo} />}
          <WayOn next={next} home={home} mayMove={me.role !== 'safety'} isRead={work !== undefined} onDone={done} />
        </>
      }
    >
      {query.isError && <Faults of={query.error} />}
      <Faults of={unkept} />
      {!work && !query.isError && <p className="quiet">Reading ...</p>}
      {work && <Told list={work.list} left={work.left.length} />}
      {work && next && <TheMove floor={work.floor} move={next} />}
      {work && <ByCode onCommand={command} />}
      {work && (
        <p>
          <Link className="btn plain" to={`/tours/${show.tourId}/shows/${show.showId}/moves?plan=${plan.id}`}>
            All moves, or a cart stands otherwise
          </Link>
        </p>
      )}
    </FloorPage>
  );
}

function Otherwise({ move, home }: { move: MoveMade; home: string }) {
  return (
    <div className="two">
      <Link className="btn plain" to={`${home}/moves/cannot`}>
        Cannot do it
      </Link>
      <Link className="btn plain" to={`${home}/moves/stands/${encodeURIComponent(cartOf(move))}`}>
        Did it differently
      </Link>
    </div>
  );
}

function TheMove({ floor, move }: { floor: Floor; move: MoveMade & { readonly why?: string } }) {
  return (
    <>
      <Drawing of={drawMove(floor, move)} />
      <div className="answer" role="status">
        <span className="mono">{move.box}</span> from {place(move.from)} onto {place(move.to)}
        {move.why && <p>{move.why}</p>}
      </div>
    </>
  );
}

/** The cart of a move: where it goes, or where it comes from. */
const cartOf = ({ from, to }: MoveMade): string => (to === 'floor' ? from : to);

const place = (name: string) => (name === 'floor' ? 'the floor' : <span className="mono">{name}</span>);

/** What the list has to say beyond its moves. */
function Told({ list, left }: { list: WorkList; left: number }) {
  return (
    <>
      {list.status === 'cannot' && <Note weight="stop">{list.sentence}</Note>}
      {list.status === 'anew' && (
        <Note weight="look">Somebody did it differently. This is the shortest list from the floor as it now stands.</Note>
      )}
      {list.otherCarts.length > 0 && (
        <Note weight="look">
          {list.otherCarts.map((each) => `${each.load} rides on ${each.now}, not on ${each.planned} as the cards say. `)}
          Plan again and release, so that cards, truck and confirmation follow.
        </Note>
      )}
      {left === 0 && list.status !== 'cannot' && <div className="answer">○ Every cart stands as it is wanted.</div>}
    </>
  );
}

/** Its height is kept where there is nothing to take back: Done does not move under the finger. */
function TakenBack({ last, onUndo }: { last: MoveMade | undefined; onUndo: (at: number) => void }) {
  if (!last) return <div className="taken none">Nothing to take back</div>;
  return (
    <div className="taken">
      <span>
        <span className="mono">{last.box}</span> onto {place(last.to)}: noted
      </span>
      <button type="button" onClick={(event) => onUndo(event.timeStamp)}>
        Undo
      </button>
    </div>
  );
}

interface WayOnProps {
  readonly next: MoveMade | undefined;
  readonly home: string;
  readonly mayMove: boolean;
  readonly isRead: boolean;
  readonly onDone: (at: number) => void;
}

function WayOn({ next, home, mayMove, isRead, onDone }: WayOnProps) {
  if (!mayMove) return <p className="quiet">Moves are noted by the warehouse and by the system tech.</p>;
  if (next)
    return (
      <button type="button" className="big" onClick={(event) => onDone(event.timeStamp)}>
        Done
      </button>
    );
  return isRead ? (
    <Link className="btn big" to={`${home}/carts`}>
      Confirm carts
    </Link>
  ) : null;
}
