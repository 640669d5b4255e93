import { useState } from 'react';
import { Link, useParams } from 'react-router';
import { type CartLoad, splaysToSet, tapGate, wrongSplays } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { Faults } from '../../../ui/faults.js';
import { useCarts } from '../../plan/use-plan-parts.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { signal } from '../page/signal.js';
import { foundWords, usePrep } from './use-prep.js';

/** Carts whose splays are preset, or one of them: each splay is set, then read back off the box. */
export function Splays(given: OnFloor) {
  const { loadId } = useParams();
  const { home, plan } = given;
  const query = useCarts(plan.id);
  const prep = usePrep(given);
  const loads = (query.data?.loads ?? []).filter((load) => load.cart !== null && splaysToSet(load).length > 0);
  const load = loads.find((each) => each.id === loadId);
  if (load)
    return (
      <ReadBack
        key={load.id}
        given={given}
        load={load}
        next={loads.find((each) => prep.foundOf('splays', each.cart) === null && each !== load)}
      />
    );
  return (
    <FloorPage name="Splays" title="Splays in the carts" back={`${home}/prep`}>
      {query.isError && <Faults of={query.error} />}
      {!query.data && !query.isError && <p className="quiet">Reading ...</p>}
      {loads.map((each) => {
        const found = prep.foundOf('splays', each.cart);
        return (
          <Link key={each.id} className="job" to={`${home}/prep/splays/${encodeURIComponent(each.id)}`}>
            <b className="mono">{each.cart}</b>
            <span>{each.name}</span>
            <div className="n">
              <small>{found ? foundWords[found] : 'open'}</small>
            </div>
          </Link>
        );
      })}
    </FloorPage>
  );
}

interface ReadProps {
  readonly given: OnFloor;
  readonly load: CartLoad;
  readonly next: CartLoad | undefined;
}

/** What was typed as degrees; undefined where it is none. */
function degreesOf(text: string | undefined): number | undefined {
  const typed = (text ?? '').trim().replace(',', '.');
  return typed !== '' && Number.isFinite(Number(typed)) ? Number(typed) : undefined;
}

/** What was typed off the boxes, and its way to the house. */
function useReadBack({ plan, show }: OnFloor, load: CartLoad) {
  const outbox = useOutbox();
  const [typed, setTyped] = useState<Readonly<Record<number, string>>>({});
  const [isNoted, setIsNoted] = useState(false);
  const [unkept, setUnkept] = useState<unknown>(null);
  const [gate] = useState(() => tapGate());
  const set = splaysToSet(load);
  const read = new Map(
    set.flatMap(({ slot }) => {
      const degrees = degreesOf(typed[slot]);
      return degrees === undefined ? [] : [[slot, degrees] as const];
    }),
  );
  const off = wrongSplays(load, read);
  const note = (at: number) => {
    if (!gate(at)) return;
    const values = { planId: plan.id, item: load.cart, load: load.id, splays: set.map(({ slot }) => read.get(slot)) };
    const words = `${show.name}: splays of ${load.cart ?? load.id} read back, ${off.length === 0 ? 'as planned' : 'otherwise than planned'}`;
    signal(off.length === 0);
    outbox.put({ kind: 'splays', values, words, tourId: show.tourId, showId: show.showId }).then(() => setIsNoted(true), setUnkept);
  };
  const type = (slot: number, text: string) => {
    setTyped({ ...typed, [slot]: text });
    setIsNoted(false);
  };
  return { typed, set, read, off, isNoted, unkept, note, type };
}

function ReadBack({ given, load, next }: ReadProps) {
  const { home, me } = given;
  const back = useReadBack(given, load);
  const { set, read, off } = back;
  const left = set.length - read.size;
  const isOff = left === 0 && off.length > 0;
  return (
    <FloorPage
      name={`${load.cart ?? load.id}, splays`}
      title={`${load.cart ?? load.id} · splays`}
      back={`${home}/prep/splays`}
      foot={
        back.isNoted && off.length === 0 ? (
          <Link className="btn big" to={next ? `${home}/prep/splays/${encodeURIComponent(next.id)}` : `${home}/prep`}>
            {next ? `Next cart: ${next.cart}` : 'All splays are read back'}
          </Link>
        ) : (
          <button
            type="button"
            className={isOff ? 'warn big' : 'big'}
            disabled={me.role === 'safety' || left > 0}
            onClick={(event) => back.note(event.timeStamp)}
          >
            {left > 0 ? `${left} to read back` : isOff ? 'Note it: not as planned' : 'They read as planned'}
          </button>
        )
      }
    >
      <Faults of={back.unkept} />
      <p className="lede">{load.name}. Set each, then type what the box reads.</p>
      <ol className="slots" aria-label="Splays set in the cart, top first">
        {load.boxes.map((box) => (
          <OneSplay key={box.slot} box={box} back={back} />
        ))}
      </ol>
    </FloorPage>
  );
}

function OneSplay({ box, back }: { box: CartLoad['boxes'][number]; back: ReturnType<typeof useReadBack> }) {
  const isSet = back.set.includes(box);
  const found = back.read.get(box.slot);
  const isWrong = isSet && found !== undefined && back.off.includes(box);
  return (
    <li className={isWrong ? 'wrong' : undefined}>
      <b>{box.slot}</b>
      <span>
        <span className="mono">{box.serial ?? 'no box planned'}</span>{' '}
        <span className="quiet">
          {isSet ? `set ${box.splayDeg}°` : box.splaySet}
          {found !== undefined && (isWrong ? ' ■ not as planned' : ' ○')}
        </span>
      </span>
      {isSet && (
        <input
          className="figure"
          inputMode="decimal"
          aria-label={`${box.serial ?? `slot ${box.slot}`} reads, degrees`}
          value={back.typed[box.slot] ?? ''}
          onChange={(event) => back.type(box.slot, event.target.value)}
        />
      )}
    </li>
  );
}
