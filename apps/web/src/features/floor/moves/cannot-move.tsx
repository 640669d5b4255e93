import { Link } from 'react-router';
import type { MoveMade } from '#pack-plan';
import { Faults } from '../../../ui/faults.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { useFloorWork } from './use-floor-work.js';

/** Why the next move cannot be done: each answer leads to the shortest rest from the floor as it then is. */
export function CannotMove({ plan, home }: OnFloor) {
  const query = useFloorWork(plan.id);
  const next = query.data?.left[0];
  return (
    <FloorPage name="Cannot do it" title={next ? `${next.box} cannot be moved` : 'Cannot do it'} back={`${home}/moves`}>
      {query.isError && <Faults of={query.error} />}
      {next && <Reasons move={next} home={home} />}
      {query.data && !next && <p>Nothing is left to move.</p>}
    </FloorPage>
  );
}

function Reasons({ move: { box, from, to }, home }: { move: MoveMade; home: string }) {
  const carts = [from, to].filter((each) => each !== 'floor');
  return (
    <>
      <h2>Why not?</h2>
      <Reason to={`${home}/fault/${encodeURIComponent(box)}`} name={`${box} is faulty`} what="its kind of fault says what follows" />
      {carts.map((cart) => (
        <Reason
          key={`stands ${cart}`}
          to={`${home}/moves/stands/${encodeURIComponent(cart)}`}
          name={`${cart} stands otherwise`}
          what="read it as it stands: the rest is listed anew from there"
        />
      ))}
      {carts.map((cart) => (
        <Reason
          key={`broken ${cart}`}
          to={`${home}/fault/${encodeURIComponent(cart)}`}
          name={`${cart} cannot be used`}
          what="it gives its boxes and carries none"
        />
      ))}
    </>
  );
}

function Reason({ to, name, what }: { to: string; name: string; what: string }) {
  return (
    <Link className="job" to={to}>
      <b>{name}</b>
      <span>{what}</span>
    </Link>
  );
}
