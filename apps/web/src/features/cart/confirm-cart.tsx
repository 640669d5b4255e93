import { type FormEvent, useEffect, useRef, useState } from 'react';
import { Link, useParams, useSearchParams } from 'react-router';
import { type CartLoad, type CartsResult, checkCart } from '#pack-plan';
import { useOutbox } from '../../platform/outbox/outbox.js';
import { pendingOf } from '../../platform/outbox/pending.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Page } from '../../ui/page.js';
import { BarredNotes, useBarred } from '../plan/barred-notes.js';
import { useCarts, useProgress } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';

/** Type or scan the serials of a cart, top first, and be told which slot is wrong and what belongs there. */
export function ConfirmCart() {
  const { tourId = '', showId = '' } = useParams();
  const query = useShow(tourId, showId);
  return (
    <Loaded query={query}>
      {({ name, inForce }) => {
        if (!inForce) return <Page title="Carts to confirm">There is no plan of this show yet.</Page>;
        return <CartsToRead name={name} inForce={inForce} tourId={tourId} showId={showId} />;
      }}
    </Loaded>
  );
}

function CartsToRead({ name, inForce, tourId, showId }: { name: string; inForce: PlanInForce; tourId: string; showId: string }) {
  const [search, setSearch] = useSearchParams();
  const query = useCarts(inForce.id);
  const outbox = useOutbox();
  const confirmed = useProgress(inForce.id).data?.cartChecks ?? [];
  const { items: barred } = useBarred(inForce.id);
  const isBarred = (id: string) => barred.some((each) => each.loads.includes(id));
  return (
    <Loaded query={query}>
      {(carts) => {
        const { loads } = carts;
        const load = loads.find((each) => each.id === search.get('load'));
        const onTheirWay = pendingOf(outbox.waiting, 'cart', inForce.id).flatMap(({ values }) => {
          const read = loads.find((each) => each.id === values.load);
          return read && !isBarred(read.id) && checkCart({ carts }, read, values.serials as string[]).every((each) => each.agrees)
            ? [read.id]
            : [];
        });
        const done = new Set([...confirmed.map((each) => each.load), ...onTheirWay]);
        if (load)
          return (
            <ReadCart key={load.id} plan={inForce} carts={carts} load={load} onBack={() => setSearch({})} tourId={tourId} showId={showId} />
          );
        return (
          <Page
            title="Carts to confirm"
            lede={
              <>
                <Link to={`/tours/${tourId}/shows/${showId}`}>{name}</Link> · {done.size} of {loads.length} confirmed
              </>
            }
          >
            <FindCart loads={loads} onFound={(id) => setSearch({ load: id })} />
            <ul className="plain floor carts">
              {loads.map((each) => (
                <li key={each.id}>
                  <button
                    type="button"
                    className={done.has(each.id) ? 'plain' : undefined}
                    style={{ width: '100%', flexDirection: 'column', padding: 10 }}
                    onClick={() => setSearch({ load: each.id })}
                  >
                    <span className="mono" style={{ fontSize: 24 }}>
                      {each.cart ?? 'no cart'}
                    </span>
                    <span>
                      {each.id}
                      {isBarred(each.id) ? ' ■ must not fly' : done.has(each.id) ? ' ○ confirmed' : ''}
                    </span>
                  </button>
                </li>
              ))}
            </ul>
          </Page>
        );
      }}
    </Loaded>
  );
}

function FindCart({ loads, onFound }: { loads: readonly CartLoad[]; onFound: (id: string) => void }) {
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = loads.find((each) => each.cart?.toLowerCase() === text.trim().toLowerCase());
    if (found) onFound(found.id);
    else setSaid(`${text.trim() || 'Nothing'} is no cart of this show.`);
  };
  return (
    <form onSubmit={submit} className="floor" style={{ maxWidth: 420, marginBottom: 16 }}>
      <label>
        Scan or type the cart
        <input value={text} autoFocus onChange={(event) => setText(event.target.value)} style={{ minHeight: 56 }} />
      </label>
      {said && (
        <p className="said" role="alert">
          {said}
        </p>
      )}
    </form>
  );
}

function ReadCart({
  plan,
  carts,
  load,
  onBack,
  tourId,
  showId,
}: {
  plan: PlanInForce;
  carts: CartsResult;
  load: CartLoad;
  onBack: () => void;
  tourId: string;
  showId: string;
}) {
  const draftKey = `read ${plan.id} ${load.id}`;
  const [serials, setSerials] = useState<string[]>(
    () => (JSON.parse(sessionStorage.getItem(draftKey) ?? 'null') as string[] | null) ?? load.boxes.map(() => ''),
  );
  const inputs = useRef<(HTMLInputElement | null)[]>([]);
  const outbox = useOutbox();
  const { items: barred, against } = useBarred(plan.id);
  const [unkept, setUnkept] = useState<unknown>(null);
  const [answer, setAnswer] = useState<{ agrees: boolean; slots: ReturnType<typeof checkCart> } | null>(null);
  useEffect(() => sessionStorage.setItem(draftKey, JSON.stringify(serials)), [draftKey, serials]);
  // Compared here, with or without a network; the reading goes to the house as soon as there is a way.
  const compare = () => {
    const values = { planId: plan.id, load: load.id, serials: serials.map((each) => each.trim()) };
    const slots = checkCart({ carts }, load, values.serials, undefined, against);
    const agrees = slots.every((each) => each.agrees) && !barred.some((each) => each.loads.includes(load.id));
    const words = `${plan.show.name}: read ${load.cart ?? 'no cart'} for ${load.id}, ${agrees ? 'agrees' : 'does not agree'}`;
    outbox.put({ kind: 'cart', values, words, tourId, showId }).catch(setUnkept);
    setAnswer({ agrees, slots });
    sound(agrees);
    if (agrees) sessionStorage.removeItem(draftKey);
    else inputs.current[slots.findIndex((slot) => !slot.agrees)]?.select();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    // A scanner sends Enter after each serial: go on to the next empty slot, and ask only when all are read.
    const next = serials.findIndex((each) => each.trim() === '');
    if (next >= 0) inputs.current[next]?.focus();
    else compare();
  };
  return (
    <Page title={load.cart ?? 'No cart'} lede={`${load.id} · read the serials from the top down`}>
      <BarredNotes planId={plan.id} load={load.id} />
      <form onSubmit={submit} className="floor" style={{ maxWidth: 560 }}>
        {answer && (
          <div className={answer.agrees ? 'answer' : 'answer look'} role="status">
            {answer.agrees
              ? `○ Agrees. ${load.cart} is confirmed.`
              : `${barred.some((each) => each.loads.includes(load.id)) ? '■ Not confirmed.' : '◐'} ${answer.slots
                  .filter((slot) => !slot.agrees)
                  .map((slot) => slot.sentence)
                  .join(' ')}`}
          </div>
        )}
        <Faults of={unkept} />
        {load.boxes.map((box, index) => {
          const slot = answer?.slots[index];
          return (
            <div key={box.slot} className={`slot ${slot && !slot.agrees ? 'bad' : ''}`}>
              <span className="k" aria-hidden="true">
                {box.slot}
              </span>
              <label>
                <span className="quiet">
                  Slot {box.slot}
                  {box.slot === 1 ? ', the top' : ''}
                </span>
                <input
                  ref={(element) => {
                    inputs.current[index] = element;
                  }}
                  autoFocus={index === 0}
                  autoComplete="off"
                  autoCapitalize="characters"
                  value={serials[index] ?? ''}
                  onChange={(event) => setSerials(serials.map((each, at) => (at === index ? event.target.value : each)))}
                />
              </label>
              {slot && (
                <p className="said" style={{ gridColumn: 2 }}>
                  {slot.agrees ? '○ agrees' : `◐ ${slot.sentence}`}
                </p>
              )}
            </div>
          );
        })}
        <div className="row">
          <button type="submit">Compare with the plan</button>
          <button type="button" className="plain" onClick={() => setSerials(load.boxes.map(() => ''))}>
            Empty the slots
          </button>
          <button type="button" className="plain" onClick={onBack}>
            Back to the carts
          </button>
        </div>
      </form>
    </Page>
  );
}

let audio: AudioContext | undefined;

/** High and short: agrees; low and long: look. Silent where the browser has no sound; never in the way of the next Enter. */
function sound(agrees: boolean): void {
  setTimeout(() => {
    try {
      audio ??= new AudioContext();
      const tone = audio.createOscillator();
      tone.frequency.value = agrees ? 880 : 220;
      tone.connect(audio.destination);
      tone.start();
      tone.stop(audio.currentTime + (agrees ? 0.12 : 0.5));
    } catch {
      // no sound here: word and shape have said it
    }
  });
}
