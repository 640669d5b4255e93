import { useState } from 'react';
import { Link, useNavigate } from 'react-router';
import type { ReturnPiece } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { Faults } from '../../../ui/faults.js';
import { Camera } from '../page/camera.js';
import { CodeField } from '../page/code-field.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { signal } from '../page/signal.js';
import { nameRead } from '../page/name-read.js';
import { useReturn } from './use-return.js';

/** What comes home: a cart is read as it stands, anything else is back as soon as it is read. */
export function ReturnHome(given: OnFloor) {
  const { home, me } = given;
  const { pieces, isError, error } = useReturn(given);
  const reading = useReadIn(given, pieces ?? []);
  const carts = (pieces ?? []).filter((each) => each.kind === 'cart');
  const open = carts.filter((each) => !each.back);
  const alone = (pieces ?? []).filter((each) => each.load === null && each.kind !== 'cart');
  const missing = (pieces ?? []).filter((each) => !each.back).length;
  return (
    <FloorPage
      name="Return"
      title={pieces ? `Return: ${pieces.length - missing} of ${pieces.length} back` : 'Return'}
      back={home}
      foot={<WayOn home={home} missing={missing} isRead={pieces !== undefined} />}
    >
      {isError && !pieces && <Faults of={error} />}
      <Faults of={reading.unkept} />
      {reading.said && (
        <div className={reading.said.isRight ? 'answer' : 'answer stop'} role={reading.said.isRight ? 'status' : 'alert'}>
          <i>{reading.said.isRight ? '○ ' : '■ Stop: '}</i>
          {reading.said.sentence}
        </div>
      )}
      {me.role === 'safety' ? (
        <p className="quiet">What comes back is scanned in by the warehouse and the system tech.</p>
      ) : (
        <>
          <CodeField label="Scan or type a cart, or anything that came back" onCode={reading.onCode} />
          <Camera onCode={reading.onCode} />
        </>
      )}
      {!pieces && !isError && <p className="quiet">Reading ...</p>}
      {[...open, ...carts.filter((each) => each.back)].map((each) => (
        <Link key={each.id} className="job" to={`${home}/return/carts/${encodeURIComponent(each.id)}`}>
          <b className="mono">{each.id}</b>
          <span>{each.load ?? each.model}</span>
          <div className="n">
            <small>{each.back ? '○ back' : 'open'}</small>
          </div>
        </Link>
      ))}
      {alone.length > 0 && (
        <details>
          <summary>
            What rides on no cart: {alone.filter((each) => each.back).length} of {alone.length} back
          </summary>
          <ul>
            {alone.map((each) => (
              <li key={each.id}>
                <span className="mono">{each.id}</span> {each.model}: {each.back ? '○ back' : 'not read yet'}
              </li>
            ))}
          </ul>
        </details>
      )}
    </FloorPage>
  );
}

function WayOn({ home, missing, isRead }: { home: string; missing: number; isRead: boolean }) {
  return (
    <>
      <Link className="btn warn" to={`${home}/fault`}>
        Something is wrong
      </Link>
      <div className="two">
        <Link className="btn" to={`${home}/return/count`}>
          Count pins and small hardware
        </Link>
        <Link className="btn" to={`${home}/return/missing`}>
          {isRead ? `Not back yet: ${missing}` : 'Not back yet'}
        </Link>
      </div>
    </>
  );
}

interface Said {
  readonly isRight: boolean;
  readonly sentence: string;
}

/** A cart opens; a box on a cart opens its cart; what stands on none is back. */
function useReadIn({ plan, show, home, me }: OnFloor, pieces: readonly ReturnPiece[]) {
  const outbox = useOutbox();
  const navigate = useNavigate();
  const [said, setSaid] = useState<Said | null>(null);
  const [unkept, setUnkept] = useState<unknown>(null);
  const say = (isRight: boolean, sentence: string) => {
    signal(isRight);
    setSaid({ isRight, sentence });
  };
  const read = async (code: string) => {
    const name = await nameRead(plan.id, code, pieces);
    if (name.is === 'said') return say(false, name.sentence);
    const piece = pieces.find((each) => each.id === name.id);
    const cart = name.kind === 'cart' ? name.id : name.kind === 'box' ? (piece?.cart ?? null) : null;
    if (cart !== null) {
      signal(true);
      return void navigate(`${home}/return/carts/${encodeURIComponent(cart)}`);
    }
    if (name.count !== null) return say(false, `${name.id} is a batch: its pieces are counted.`);
    if (piece?.back) return say(true, `${name.id} is back already.`);
    const words = `${show.name}: ${name.id} came back`;
    const values = { planId: plan.id, items: [name.id] };
    outbox.put({ kind: 'return items', values, words, tourId: show.tourId, showId: show.showId }).catch(setUnkept);
    return say(true, `${name.id} is back.`);
  };
  return { said, unkept, onCode: (code: string) => (me.role === 'safety' ? undefined : void read(code)) };
}
