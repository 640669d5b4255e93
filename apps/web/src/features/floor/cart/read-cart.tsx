import { Link, useNavigate, useParams } from 'react-router';
import { type CartLoad, type CartsResult, type FloorCommand, checkCart, commandOf } from '#pack-plan';
import type { ReadFinding } from '#trade';
import { english, tell } from '#words';
import { Faults } from '../../../ui/faults.js';
import { Note } from '../../../ui/notes.js';
import { BarredNotes } from '../../plan/barred-notes.js';
import { useCarts } from '../../plan/use-plan-parts.js';
import { ByCode } from '../page/by-code.js';
import { Camera } from '../page/camera.js';
import { CodeField } from '../page/code-field.js';
import { OpenFaults } from '../fault/open-faults.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { signal } from '../page/signal.js';
import { usePrep } from '../prep/use-prep.js';
import { TakeIn } from './take-in.js';
import { useConfirmed } from './use-confirmed.js';
import { type Reading, useReading } from './use-reading.js';

/** One cart is confirmed: its boxes are read in any order, each answered at once. */
export function ReadCart(given: OnFloor) {
  const { loadId = '' } = useParams();
  const query = useCarts(given.plan.id);
  const load = query.data?.loads.find((each) => each.id === loadId);
  if (query.data && load) return <TheCart key={load.id} given={given} carts={query.data} load={load} />;
  return (
    <FloorPage name={loadId} title={loadId} back={`${given.home}/carts`}>
      {query.isError ? <Faults of={query.error} /> : <p>{query.data ? 'The plan in force has no such load.' : 'Reading ...'}</p>}
    </FloorPage>
  );
}

interface CartProps {
  readonly given: OnFloor;
  readonly carts: CartsResult;
  readonly load: CartLoad;
}

function TheCart({ given, carts, load }: CartProps) {
  const reading = useReading(given, carts, load);
  const { said, read, progress } = reading;
  const isOpen = progress.is === 'open' && !reading.isConfirmed;
  const command = useCommands({ given, carts, load, reading });
  const onCode = (code: string) => {
    const said = commandOf(code);
    return said ? command(said) : reading.onCode(code);
  };
  return (
    <FloorPage
      name={`${load.cart ?? 'No cart'}, ${load.id}`}
      title={`${load.cart ?? 'No cart'} · ${load.id}`}
      back={`${given.home}/carts`}
      foot={<WayOn given={given} carts={carts} load={load} reading={reading} />}
    >
      <BarredNotes planId={given.plan.id} load={load.id} />
      {given.told?.load === load.id && <Note weight={given.told.weight}>{given.told.sentence}</Note>}
      <Faults of={reading.unkept} />
      <Answer reading={reading} load={load} />
      <OpenFaults planId={given.plan.id} boxes={load.boxes.flatMap((each) => each.serial ?? [])} />
      {said?.code === 'same-model' && <TakeIn given={given} load={load} said={said} />}
      {said?.code === 'other-cart' && (
        <p className="row">
          <Link className="btn" to={`${given.home}/carts/${encodeURIComponent(said.load)}`}>
            Go on with {said.cart}
          </Link>
        </p>
      )}
      {isOpen && <CodeField label="Scan or type a box, top first or in any order" onCode={onCode} />}
      {isOpen && <Camera onCode={onCode} />}
      {!isOpen && <ByCode onCommand={command} />}
      {reading.otherwise.length > 0 && (
        <p className="row">
          <Link className="btn plain" to={`${given.home}/moves`}>
            To the box moves
          </Link>
        </p>
      )}
      <Slots given={given} load={load} read={read} isConfirmed={reading.isConfirmed} />
    </FloorPage>
  );
}

/** Every other finding says stop. */
const goesOn: ReadonlySet<ReadFinding['code']> = new Set(['right', 'read-before', 'this-cart', 'same-model', 'other-cart', 'two-meant']);

/** Right, a question, or stop: as a word, a shape and a colour. */
function Answer({ reading, load }: { reading: Reading; load: CartLoad }) {
  const { said, progress, isConfirmed, isBarred, otherwise } = reading;
  if (isConfirmed)
    return (
      <div className="answer" role="status">
        <i>○ Agrees.</i> {load.cart ?? load.id} is confirmed.
      </div>
    );
  if (otherwise.length > 0)
    return (
      <div className="answer stop" role="alert">
        <i>■ Stop: it stands otherwise than planned.</i> Restack it, or take it as it is at the box moves.
        {otherwise.map((each) => (
          <p key={each}>{each}</p>
        ))}
      </div>
    );
  if (progress.is !== 'open' && isBarred)
    return (
      <div className="answer stop" role="alert">
        <i>■ Not confirmed.</i> All boxes are there, and one of this cart must not fly.
      </div>
    );
  if (progress.is === 'all there')
    return (
      <div className="answer look" role="status">
        <i>◐ All {progress.serials.length} are there.</i> How do they stand, top first?
      </div>
    );
  if (!said)
    return (
      <div className="answer" role="status">
        {load.boxes.length} boxes to read.
      </div>
    );
  const isStop = !goesOn.has(said.code);
  const isLook = said.code === 'same-model' || said.code === 'other-cart' || said.code === 'two-meant';
  return (
    <div className={isStop ? 'answer stop' : isLook ? 'answer look' : 'answer'} role={isStop ? 'alert' : 'status'}>
      <i>{isStop ? '■ ' : isLook ? '◐ ' : '○ '}</i>
      {tell(english.reads, said)}
    </div>
  );
}

interface SlotsProps {
  readonly given: OnFloor;
  readonly load: CartLoad;
  readonly read: readonly string[];
  readonly isConfirmed: boolean;
}

const testWords = { agrees: '○ tested', 'does not agree': '■ failed its test', 'on its way': '◐ test noted' } as const;

function Slots({ given, load, read, isConfirmed }: SlotsProps) {
  const prep = usePrep(given);
  const testOf = (serial: string | null) => {
    const found = prep.foundOf('bench', serial);
    return found ? testWords[found] : 'not tested';
  };
  return (
    <ol className="slots" aria-label="Slots, top first">
      {load.boxes.map((box) => {
        const isRead = isConfirmed || (box.serial !== null && read.includes(box.serial));
        return (
          <li key={box.slot} className={box.serial === null ? 'wrong' : undefined}>
            <b>{box.slot}</b>
            <span>
              <span className="mono">{box.serial ?? 'no box planned'}</span>{' '}
              <span className="quiet">
                {isRead ? '○ read' : 'not read yet'}
                {prep.isRead && box.serial !== null && `, ${testOf(box.serial)}`}
              </span>
            </span>
            <span className="mono">{box.splayDeg}°</span>
          </li>
        );
      })}
    </ol>
  );
}

interface WayOnProps extends CartProps {
  readonly reading: Reading;
}

/** Codes of a lanyard: on to the next cart when this one is confirmed, the last box taken back, a fault. How a cart stands is never said by a code. */
function useCommands({ given, carts, load, reading }: WayOnProps): (said: FloorCommand) => void {
  const navigate = useNavigate();
  const next = useNext(given, carts, load);
  return (said) => {
    if (said === 'fault') return void navigate(`${given.home}/fault`);
    if (said === 'undo') return reading.takeLast();
    if (!reading.isConfirmed) return signal(false);
    return void navigate(next ? `${given.home}/carts/${encodeURIComponent(next.id)}` : given.home);
  };
}

/** The first cart that is not confirmed yet. */
function useNext(given: OnFloor, carts: CartsResult, load: CartLoad): CartLoad | undefined {
  const confirmed = useConfirmed(given.plan.id);
  return carts.loads.find((each) => each.id !== load.id && !confirmed.has(each.id));
}

function WayOn({ given, carts, load, reading }: WayOnProps) {
  const { progress, isConfirmed, isBarred } = reading;
  const next = useNext(given, carts, load);
  if (progress.is === 'all there' && !isConfirmed && !isBarred && reading.otherwise.length === 0)
    return <HowItStands carts={carts} load={load} reading={reading} />;
  return (
    <>
      {(reading.read.length > 0 || isConfirmed) && (
        <button type="button" className="plain" onClick={reading.again}>
          Read it again
        </button>
      )}
      {next ? (
        <Link className={isConfirmed ? 'btn big' : 'btn plain'} to={`${given.home}/carts/${encodeURIComponent(next.id)}`}>
          Next cart: {next.cart ?? next.id}
        </Link>
      ) : (
        <Link className="btn big" to={given.home}>
          All carts are confirmed
        </Link>
      )}
    </>
  );
}

/** All are there, in whatever order they were read: one look says how they stand. Both ways are offered alike, so that no reflex confirms. */
function HowItStands({ carts, load, reading }: { carts: CartsResult; load: CartLoad; reading: Reading }) {
  if (reading.progress.is !== 'all there') return null;
  const { serials, asRead } = reading.progress;
  const wrong = checkCart({ carts }, load, asRead).filter((each) => !each.agrees).length;
  return (
    <>
      <div className="two stand">
        <button type="button" className="plain" onClick={() => reading.send(serials, true)}>
          As planned, top first: <TopFirst serials={serials} />
        </button>
        <button type="button" className="plain" onClick={() => reading.send(asRead, false)}>
          As I read it: <TopFirst serials={asRead} />
          <small>
            {wrong} {wrong === 1 ? 'slot' : 'slots'} wrong
          </small>
        </button>
      </div>
      <button type="button" className="plain" onClick={reading.again}>
        Read it again
      </button>
    </>
  );
}

function TopFirst({ serials }: { serials: readonly string[] }) {
  return serials.map((each) => (
    <span key={each} className="mono">
      {each}
    </span>
  ));
}
