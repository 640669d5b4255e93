import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { Link, useParams, useSearchParams } from 'react-router';
import { drawStacks } from '#drawings';
import type { WorkList } from '#pack-plan';
import { useOutbox } from '../../platform/outbox/outbox.js';
import { pendingOf } from '../../platform/outbox/pending.js';
import { request } from '../../platform/request.js';
import { Drawing } from '../../ui/drawing.js';
import { Faults } from '../../ui/faults.js';
import { Findings } from '../../ui/findings.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { useNarrow } from '../../ui/use-narrow.js';
import { setStackMutation, workListQuery } from './operations.js';
import { useCarts, useFindings } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';

/** The work list of a crew: what is left from the floor as it stands, one line a box move. */
export function Moves() {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  const wanted = useSearchParams()[0].get('plan');
  return (
    <Loaded query={query}>
      {({ name, inForce: usual, draft, released }) => {
        const inForce = [draft, released].find((each) => each?.id === wanted) ?? usual;
        return inForce ? (
          <Work key={inForce.id} plan={inForce} name={name} tourId={tourId} showId={showId} />
        ) : (
          <Page title="Box moves">There is no plan of this show yet.</Page>
        );
      }}
    </Loaded>
  );
}

function Work({ plan, name, tourId, showId }: { plan: PlanInForce; name: string; tourId: string; showId: string }) {
  const outbox = useOutbox();
  const [unkept, setUnkept] = useState<unknown>(null);
  const findings = useFindings(plan.id).data ?? [];
  const key = ['work-list', plan.id];
  const query = useQuery({ queryKey: key, queryFn: async () => (await request(workListQuery, { planId: plan.id })).workList });
  const done = pendingOf(outbox.waiting, 'move', plan.id).map(({ values }) => values);
  const move = ({ box, from, to }: Move) => {
    const words = `${name}: ${box} moved from ${from} to ${to}`;
    outbox.put({ kind: 'move', values: { planId: plan.id, box, from, to }, words, tourId, showId }).catch(setUnkept);
  };
  return (
    <Loaded query={query}>
      {(list) => (
        <Page
          title="Box moves"
          lede={
            <>
              <Link to={`/tours/${tourId}/shows/${showId}`}>{name}</Link> · {plan.revision ? `revision ${plan.revision}` : 'draft'} ·{' '}
              {list.sentence}
            </>
          }
        >
          <Part number={1} title="To do" margin={<Findings findings={findings} section="carts" />}>
            {list.status === 'anew' && (
              <Note weight="look">Somebody did it differently. This is the shortest list from the floor as it now stands.</Note>
            )}
            {list.otherCarts.length > 0 && (
              <Note weight="look">
                {list.otherCarts.map((each) => `${each.load} rides on ${each.now}, not on ${each.planned} as the cards say. `)}
                Plan again and release, so that cards, truck and confirmation follow.
              </Note>
            )}
            <Faults of={unkept} />
            <ToDo
              list={list}
              onDone={move}
              isDone={(each) => done.some((one) => one.box === each.box && one.from === each.from && one.to === each.to)}
            />
            <OtherFloor planId={plan.id} list={list} />
          </Part>
          <FloorParts list={list} plan={plan} />
        </Page>
      )}
    </Loaded>
  );
}

type Move = WorkList['moves'][number];

function ToDo({ list, onDone, isDone }: { list: WorkList; onDone: (move: Move) => void; isDone: (move: Move) => boolean }) {
  const first = list.moves.findIndex((each) => !isDone(each));
  if (list.moves.length === 0) return <p>{list.status === 'cannot' ? list.sentence : 'Every cart stands as it is wanted.'}</p>;
  return (
    <div className="scroll floor">
      <table className="ticks">
        <thead>
          <tr>
            <th>Done</th>
            <th className="num opt">Round</th>
            <th>Box</th>
            <th>From</th>
            <th>To</th>
            <th>Why</th>
          </tr>
        </thead>
        <tbody>
          {list.moves.map((move, index) => (
            <tr key={`${move.box} ${move.from} ${move.to}`} aria-current={index === first ? 'step' : undefined}>
              <td>
                <button type="button" disabled={isDone(move)} aria-label={`Done: ${move.box} to ${move.to}`} onClick={() => onDone(move)}>
                  {isDone(move) ? '○ Done' : 'Done'}
                </button>
              </td>
              <td className="num opt">{move.round}</td>
              <td className="mono">{move.box}</td>
              <td className="mono">{move.from}</td>
              <td className="mono">{move.to}</td>
              <td>{move.why}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        Moves of one round wait for none of each other: a crew of four shares them. A box to the floor stands alone, beside its cart.
      </p>
    </div>
  );
}

/** Takes the floor as somebody reads it off, cart by cart. */
function OtherFloor({ planId, list }: { planId: string; list: WorkList }) {
  const carts = list.floor.carts;
  const [cart, setCart] = useState(carts[0]?.cart ?? '');
  const [text, setText] = useState<string | null>(null);
  const client = useQueryClient();
  const standing = carts.find((each) => each.cart === cart)?.boxes.join(' ') ?? '';
  const save = useMutation({
    mutationFn: () => request(setStackMutation, { cart, serials: (text ?? standing).split(/[\s,]+/).filter((each) => each !== '') }),
    onSuccess: async () => {
      setText(null);
      await client.invalidateQueries({ queryKey: ['work-list', planId] });
      await client.invalidateQueries({ queryKey: ['show'] });
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <details>
      <summary>A cart stands otherwise than shown here</summary>
      <form onSubmit={submit} className="floor">
        <div className="fields">
          <label>
            Cart
            <select
              value={cart}
              onChange={(event) => {
                setCart(event.target.value);
                setText(null);
              }}
            >
              {carts.map((each) => (
                <option key={each.cart}>{each.cart}</option>
              ))}
            </select>
          </label>
          <label>
            Its boxes, top first
            <input value={text ?? standing} onChange={(event) => setText(event.target.value)} autoCapitalize="characters" />
          </label>
        </div>
        <Faults of={save.error} />
        <button type="submit" disabled={save.isPending}>
          Take the floor as it now is
        </button>
      </form>
    </details>
  );
}

function FloorParts({ list, plan }: { list: WorkList; plan: PlanInForce }) {
  const carts = useCarts(plan.id).data;
  const next = list.moves[0];
  const across = useNarrow() ? 3 : 6;
  const touched = new Set([...list.moves.flatMap((each) => [each.from, each.to]), ...(carts?.loads ?? []).map((each) => each.cart ?? '')]);
  return (
    <>
      <Part
        number={2}
        title="The floor as it stands"
        margin={
          next && (
            <p className="note">
              <b>Hatched:</b> {next.box} moves next, from {next.from} to {next.to}.
            </p>
          )
        }
      >
        <Drawing
          of={drawStacks(
            list.floor.carts.filter((each) => touched.has(each.cart)),
            new Set(next ? [next.box] : []),
            across,
          )}
        />
        {list.floor.loose.length > 0 && (
          <p>
            On the floor: <span className="mono">{list.floor.loose.join(', ')}</span>
          </p>
        )}
      </Part>
      <Part number={3} title="The floor as the plan wants it">
        <Drawing
          of={drawStacks(
            (carts?.floorAfter.carts ?? []).filter((each) => touched.has(each.cart)),
            new Set(),
            across,
          )}
        />
      </Part>
    </>
  );
}
