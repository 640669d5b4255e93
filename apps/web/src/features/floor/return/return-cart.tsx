import { useState } from 'react';
import { Link, useParams } from 'react-router';
import { type ReturnPiece, tapGate } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { Faults } from '../../../ui/faults.js';
import { Camera } from '../page/camera.js';
import { CodeField } from '../page/code-field.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { signal } from '../page/signal.js';
import { useTopDown } from '../page/use-top-down.js';
import { useReturn } from './use-return.js';

/** One cart that came back, read from the top down as it stands. */
export function ReturnCart(given: OnFloor) {
  const { cartId = '' } = useParams();
  const { pieces, isError, error } = useReturn(given);
  if (pieces) return <TheCart key={cartId} given={given} cartId={cartId} pieces={pieces} />;
  return (
    <FloorPage name={cartId} title={cartId} back={`${given.home}/return`}>
      {isError ? <Faults of={error} /> : <p className="quiet">Reading ...</p>}
    </FloorPage>
  );
}

interface CartProps {
  readonly given: OnFloor;
  readonly cartId: string;
  readonly pieces: readonly ReturnPiece[];
}

function TheCart({ given, cartId, pieces }: CartProps) {
  const { plan, show, home, me } = given;
  const outbox = useOutbox();
  const [unkept, setUnkept] = useState<unknown>(null);
  const [gate] = useState(() => tapGate());
  const reading = useTopDown(plan.id, pieces);
  const { boxes } = reading;
  const onFile = pieces.filter((each) => each.cart === cartId && each.slot !== null).sort((a, b) => (a.slot ?? 0) - (b.slot ?? 0));
  const cart = pieces.find((each) => each.id === cartId);
  const [isSent, setIsSent] = useState(false);
  const send = (at: number) => {
    if (!gate(at)) return;
    const values = { planId: plan.id, cart: cartId, serials: boxes };
    const words = `${show.name}: ${cartId} came back with ${boxes.join(', ') || 'nothing on it'}`;
    outbox.put({ kind: 'return cart', values, words, tourId: show.tourId, showId: show.showId }).then(() => setIsSent(true), setUnkept);
    signal(true);
  };
  return (
    <FloorPage
      name={`${cartId}, return`}
      title={`${cartId} comes back`}
      back={`${home}/return`}
      foot={
        isSent ? (
          <NextCart home={home} cartId={cartId} pieces={pieces} />
        ) : (
          <ThatIsAll boxes={boxes} isAllowed={me.role !== 'safety'} onLast={reading.takeLast} onAll={send} />
        )
      }
    >
      <Faults of={unkept} />
      <Answer isDone={isSent} cartId={cartId} boxes={boxes} said={reading.said} back={cart?.back ?? null} />
      {!isSent && (
        <>
          <CodeField label="Scan or type the boxes, top first" onCode={reading.onCode} />
          <Camera onCode={reading.onCode} />
          {boxes.length === 0 && onFile.length > 0 && (
            <p className="row">
              <button type="button" className="plain" onClick={() => reading.takeAll(onFile.map((each) => each.id))}>
                As it left, top first: {onFile.map((each) => each.id).join(', ')}
              </button>
            </p>
          )}
        </>
      )}
      <ol className="slots" aria-label="As it stands, top first">
        {boxes.map((box, index) => (
          <li key={box}>
            <b>{index + 1}</b>
            <span className="mono">{box}</span>
            <Link className="btn plain" to={`${home}/fault/${encodeURIComponent(box)}`}>
              a fault
            </Link>
          </li>
        ))}
      </ol>
    </FloorPage>
  );
}

function NextCart({ home, cartId, pieces }: Pick<CartProps, 'cartId' | 'pieces'> & { home: string }) {
  const next = pieces.find((each) => each.kind === 'cart' && each.id !== cartId && !each.back);
  return (
    <Link className="btn big" to={next ? `${home}/return/carts/${encodeURIComponent(next.id)}` : `${home}/return`}>
      {next ? `Next cart: ${next.id}` : 'All carts are back'}
    </Link>
  );
}

interface AllProps {
  readonly boxes: readonly string[];
  readonly isAllowed: boolean;
  readonly onLast: () => void;
  readonly onAll: (at: number) => void;
}

function ThatIsAll({ boxes, isAllowed, onLast, onAll }: AllProps) {
  return (
    <>
      {boxes.length > 0 && (
        <button type="button" className="plain" onClick={onLast}>
          Take {boxes.at(-1)} off the list
        </button>
      )}
      <button type="button" className="big" disabled={!isAllowed} onClick={(event) => onAll(event.timeStamp)}>
        {boxes.length === 0 ? 'It is empty' : `That is all: ${boxes.length} ${boxes.length === 1 ? 'box' : 'boxes'}`}
      </button>
    </>
  );
}

interface AnswerProps {
  readonly isDone: boolean;
  readonly cartId: string;
  readonly boxes: readonly string[];
  readonly said: string | null;
  readonly back: ReturnPiece['back'];
}

function Answer({ isDone, cartId, boxes, said, back }: AnswerProps) {
  if (isDone)
    return (
      <div className="answer" role="status">
        <i>○ {cartId} is back</i> with {boxes.join(', ') || 'nothing on it'}.
      </div>
    );
  if (said !== null)
    return (
      <div className="answer stop" role="alert">
        <i>■ Stop:</i> {said}
      </div>
    );
  const last = boxes.at(-1);
  return (
    <div className="answer" role="status">
      {last ? `○ ${last}: ${boxes.length === 1 ? 'the top' : `number ${boxes.length} from the top`}.` : 'How does it stand? Top first.'}
      {back && <p>Read in before by {back.by}: read it again where it stands otherwise.</p>}
    </div>
  );
}
