import { useState } from 'react';
import { Link, useNavigate } from 'react-router';
import { type CartsResult, matchCode } from '#pack-plan';
import { Faults } from '../../../ui/faults.js';
import { useBarred } from '../../plan/barred-notes.js';
import { useCarts } from '../../plan/use-plan-parts.js';
import { Camera } from '../page/camera.js';
import { CodeField } from '../page/code-field.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { signal } from '../page/signal.js';
import { useConfirmed } from './use-confirmed.js';

/** Which cart: its code, or that of any box on it, or by name from the list. */
export function ChooseCart({ plan, home }: OnFloor) {
  const query = useCarts(plan.id);
  const confirmed = useConfirmed(plan.id);
  const barred = useBarred(plan.id).items;
  const navigate = useNavigate();
  const [said, setSaid] = useState<string | null>(null);
  const loads = query.data?.loads ?? [];
  const next = loads.find((each) => !confirmed.has(each.id));
  const pathOf = (load: string) => `${home}/carts/${encodeURIComponent(load)}`;
  // A code read before the plan is there waits for it.
  const onCode = async (code: string): Promise<void> => {
    if (!query.data) setSaid('The plan is being read; the code is looked up as soon as it is there.');
    const carts = query.data ?? (await query.refetch({ cancelRefetch: false })).data;
    const found = carts ? loadOf(carts, code) : { said: 'The plan could not be read: scan once more.' };
    signal('load' in found);
    if ('load' in found) void navigate(pathOf(found.load));
    else setSaid(found.said);
  };
  return (
    <FloorPage
      name="Carts to confirm"
      title={`Carts: ${loads.filter((each) => !confirmed.has(each.id)).length} of ${loads.length} left`}
      back={home}
      foot={
        next && (
          <Link className="btn big" to={pathOf(next.id)}>
            Confirm {next.cart ?? next.id}
          </Link>
        )
      }
    >
      {query.isError && <Faults of={query.error} />}
      {said && (
        <div className="answer stop" role="alert">
          <i>■ Stop:</i> {said}
        </div>
      )}
      <CodeField label="Scan or type a cart, or a box on it" onCode={(code) => void onCode(code)} />
      <Camera onCode={(code) => void onCode(code)} />
      {loads.map((each) => {
        const mustNot = barred.some((item) => item.loads.includes(each.id));
        return (
          <Link key={each.id} className={mustNot ? 'job stop' : 'job'} to={pathOf(each.id)}>
            <b className="mono">{each.cart ?? 'no cart'}</b>
            <span>{each.id}</span>
            <div className="n">
              <small>{mustNot ? '■ must not fly' : confirmed.has(each.id) ? '○ confirmed' : 'open'}</small>
            </div>
          </Link>
        );
      })}
    </FloorPage>
  );
}

function loadOf({ loads, floorBefore }: CartsResult, code: string): { readonly load: string } | { readonly said: string } {
  const loadsOf = new Map(
    loads.flatMap((load) =>
      [load.cart, ...load.boxes.map((box) => box.serial)].flatMap((id) => (id === null ? [] : [[id, load.id] as const])),
    ),
  );
  const others = [...floorBefore.carts.flatMap((each) => [each.cart, ...each.boxes]), ...floorBefore.loose];
  const match = matchCode(code, [...loadsOf.keys(), ...others]);
  if (match.is === 'several') return { said: `${code.trim()} can mean ${match.ids.join(' or ')}: type it whole.` };
  if (match.is === 'none') return { said: `${code.trim().slice(0, 60)} is neither a cart nor a box of this show.` };
  const load = loadsOf.get(match.id);
  return load === undefined ? { said: `${match.id} is on this floor, and no cart of this show wants it.` } : { load };
}
