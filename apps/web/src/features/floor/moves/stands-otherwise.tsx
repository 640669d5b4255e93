import { useState } from 'react';
import { useNavigate, useParams } from 'react-router';
import { type Floor, tapGate } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { Faults } from '../../../ui/faults.js';
import { Camera } from '../page/camera.js';
import { CodeField } from '../page/code-field.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { useTopDown } from '../page/use-top-down.js';
import { useFloorWork } from './use-floor-work.js';

/** A cart is read as it really stands; the rest of the moves is the shortest list from there. */
export function StandsOtherwise(given: OnFloor) {
  const { cartId = '' } = useParams();
  const query = useFloorWork(given.plan.id);
  if (query.data) return <Read key={cartId} given={given} cart={cartId} floor={query.data.floor} />;
  return (
    <FloorPage name={cartId} title={cartId} back={`${given.home}/moves`}>
      {query.isError ? <Faults of={query.error} /> : <p className="quiet">Reading ...</p>}
    </FloorPage>
  );
}

function Read({ given, cart, floor }: { given: OnFloor; cart: string; floor: Floor }) {
  const { plan, show, home } = given;
  const outbox = useOutbox();
  const navigate = useNavigate();
  const [unkept, setUnkept] = useState<unknown>(null);
  const [gate] = useState(() => tapGate());
  const known = [...floor.carts.flatMap((each) => each.boxes), ...floor.loose].map((id) => ({ id, kind: 'box' }));
  const reading = useTopDown(plan.id, known);
  const { boxes } = reading;
  const stands = floor.carts.find((each) => each.cart === cart)?.boxes ?? [];
  const send = (at: number) => {
    if (!gate(at)) return;
    const words = `${show.name}: ${cart} holds ${boxes.join(', ') || 'nothing'}, top first`;
    outbox
      .put({ kind: 'stack', values: { planId: plan.id, cart, serials: boxes }, words, tourId: show.tourId, showId: show.showId })
      .then(() => navigate(`${home}/moves`), setUnkept);
  };
  return (
    <FloorPage
      name={`${cart} as it stands`}
      title={`${cart} as it stands`}
      back={`${home}/moves`}
      foot={
        <>
          {boxes.length > 0 && (
            <button type="button" className="plain" onClick={reading.takeLast}>
              Take {boxes.at(-1)} off the list
            </button>
          )}
          <button type="button" className="big" onClick={(event) => send(event.timeStamp)}>
            {boxes.length === 0 ? 'It is empty' : `That is all: ${boxes.length} ${boxes.length === 1 ? 'box' : 'boxes'}`}
          </button>
        </>
      }
    >
      <Faults of={unkept} />
      {reading.said !== null && (
        <div className="answer stop" role="alert">
          <i>■ Stop:</i> {reading.said}
        </div>
      )}
      <p className="lede">By the record: {stands.join(', ') || 'nothing'}, top first.</p>
      <CodeField label="Scan or type the boxes, top first" onCode={reading.onCode} />
      <Camera onCode={reading.onCode} />
      <ol className="slots" aria-label="As it stands, top first">
        {boxes.map((box, index) => (
          <li key={box}>
            <b>{index + 1}</b>
            <span className="mono">{box}</span>
          </li>
        ))}
      </ol>
    </FloorPage>
  );
}
