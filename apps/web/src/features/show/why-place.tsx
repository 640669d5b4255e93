import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { graphql } from '#contracts';
import { drawCart } from '#drawings';
import type { CartLoad } from '#pack-plan';
import { request } from '../../platform/request.js';
import { Drawing } from '../../ui/drawing.js';
import { Loaded } from '../../ui/page.js';

const whyQuery = graphql(
  `query WhyHere($id: ID!, $load: String!, $slot: Int) { whyHere(planId: $id, load: $load, slot: $slot) { code sentence } }`,
);

/** A place that somebody points at: a slot of a cart load, or its cart. */
export interface ChosenPlace {
  readonly load: CartLoad;
  readonly slot: number | null;
}

/** A cart of which every box, and the cart itself, can be asked why it stands there. */
export function AskableCart({ load, onAsk }: { load: CartLoad; onAsk: (place: ChosenPlace) => void }) {
  const rows = Math.max(load.capacity, load.boxes.length, 1);
  const height = 22 + rows * 46 + 34;
  const empty = rows - load.boxes.length;
  const share = (part: number, of: number) => `${(100 * part) / of}%`;
  return (
    <div className="askable">
      <Drawing of={drawCart(load)} />
      {load.boxes.map(({ slot, serial }, index) => (
        <button
          key={slot}
          type="button"
          className="ask"
          aria-label={`Why ${serial ?? 'no box'} stands in slot ${slot}`}
          title={`Why ${serial ?? 'no box'} stands here`}
          style={{ top: share(22 + (empty + index) * 46, height), height: share(42, height), left: share(22, 232), width: share(188, 232) }}
          onClick={() => onAsk({ load, slot })}
        />
      ))}
    </div>
  );
}

/** Why this one, and not another: it is barred and the plan is asked for again; what comes out worse is the reason. */
export function WhyPlace({ planId, place, onClose }: { planId: string; place: ChosenPlace; onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const { load, slot } = place;
  const query = useQuery({
    queryKey: ['why', planId, load.id, slot],
    queryFn: async () => (await request(whyQuery, { id: planId, load: load.id, slot })).whyHere,
  });
  const what = slot === null ? (load.cart ?? 'no cart') : (load.boxes.find((box) => box.slot === slot)?.serial ?? 'no box');
  return (
    <dialog ref={dialog} onClose={onClose} aria-labelledby="why-title" className="why">
      <h3 id="why-title">
        Why <span className="mono">{what}</span> {slot === null ? `carries ${load.name}` : `stands in slot ${slot} of ${load.name}`}
      </h3>
      <Loaded query={query}>{({ sentence }) => <p role="status">{sentence}</p>}</Loaded>
      {query.isPending && <p className="quiet">It is barred and the plan asked for again; what comes out worse is the reason.</p>}
      <form method="dialog">
        <button type="submit" className="plain">
          Close
        </button>
      </form>
    </dialog>
  );
}
