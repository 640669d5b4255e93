import { useState } from 'react';
import { Link, useNavigate, useParams } from 'react-router';
import { type FaultKind, tapGate } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { Faults } from '../../../ui/faults.js';
import { Camera } from '../page/camera.js';
import { CodeField } from '../page/code-field.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { nameRead } from '../page/name-read.js';
import { signal } from '../page/signal.js';
import { Picture } from './picture.js';
import { type Sheet, useFaultSheet } from './use-fault-sheet.js';
import { WhatFollows } from './what-follows.js';

/** Something is wrong with an item: which, then what kind of fault, which says what follows. */
export function ReportFault(given: OnFloor) {
  const { itemId } = useParams();
  return itemId === undefined ? <WhichItem {...given} /> : <TheItem key={itemId} given={given} itemId={itemId} />;
}

function WhichItem({ plan, home }: OnFloor) {
  const navigate = useNavigate();
  const [said, setSaid] = useState<string | null>(null);
  const onCode = async (code: string) => {
    const name = await nameRead(plan.id, code, []);
    signal(name.is === 'known');
    if (name.is === 'known') void navigate(`${home}/fault/${encodeURIComponent(name.id)}`);
    else setSaid(name.sentence);
  };
  return (
    <FloorPage name="Something is wrong" title="Something is wrong" back={home}>
      <h2>With which item?</h2>
      {said && (
        <div className="answer stop" role="alert">
          <i>■ Stop:</i> {said}
        </div>
      )}
      <CodeField label="Scan or type it" onCode={(code) => void onCode(code)} />
      <Camera onCode={(code) => void onCode(code)} />
    </FloorPage>
  );
}

const kinds: readonly { readonly kind: FaultKind; readonly name: string; readonly what: string }[] = [
  { kind: 'rigging', name: 'Rigging', what: 'link, pin hole, spine, weld, handle: out of service at once' },
  { kind: 'sound', name: 'Sound', what: 'out, or it flies at the bottom of a hang' },
  { kind: 'looks', name: 'Looks only', what: 'repaired at home, flies meanwhile' },
];

/** What is said of it, on its way or taken. */
interface Told {
  readonly kind: FaultKind;
  readonly then: 'out' | 'bottom' | 'flies';
}

function TheItem({ given, itemId }: { given: OnFloor; itemId: string }) {
  const { home } = given;
  const query = useFaultSheet(itemId);
  const [kind, setKind] = useState<FaultKind | null>(null);
  const [told, setTold] = useState<Told | null>(null);
  const sheet = query.data;
  if (told)
    return (
      <FloorPage
        name={`${itemId}, a fault`}
        title={`${itemId}: noted`}
        back={home}
        foot={
          <Link className="btn big" to={home}>
            To what is to do now
          </Link>
        }
      >
        <WhatFollows itemId={itemId} then={told.then} sheet={sheet} />
        <Picture itemId={itemId} />
      </FloorPage>
    );
  if (kind === null)
    return (
      <FloorPage name={`${itemId}, a fault`} title={`${itemId}: something is wrong`} back={home}>
        <h2>What is wrong with it?</h2>
        {query.isError && <Faults of={query.error} />}
        <p className="lede">{sheet && `${sheet.model}${whereOf(sheet)}`}</p>
        {kinds.map((each) => (
          <button key={each.kind} type="button" className="job plain pick" onClick={() => setKind(each.kind)}>
            <b>{each.name}</b>
            <span>{each.what}</span>
          </button>
        ))}
      </FloorPage>
    );
  return <Say given={given} itemId={itemId} kind={kind} count={sheet?.count ?? null} onBack={() => setKind(null)} onTold={setTold} />;
}

/** Where it flies by a released plan. */
const whereOf = ({ fliesIn: [first], state }: Sheet): string =>
  `${first ? `, in ${first.cart ?? first.load} (${first.show}, ${first.from})` : ''}${state === 'in service' ? '' : `, ${state}`}`;

interface SayProps {
  readonly given: OnFloor;
  readonly itemId: string;
  readonly kind: FaultKind;
  readonly count: number | null;
  readonly onBack: () => void;
  readonly onTold: (told: Told) => void;
}

/** What it is in a few words, and what follows. */
function Say({ given: { show, home }, itemId, kind, count, onBack, onTold }: SayProps) {
  const outbox = useOutbox();
  const [what, setWhat] = useState('');
  const [pieces, setPieces] = useState('1');
  const [unkept, setUnkept] = useState<unknown>(null);
  const [gate] = useState(() => tapGate());
  const many = Number(pieces);
  const isReady = what.trim() !== '' && (count === null || (Number.isInteger(many) && many >= 1 && many <= count));
  const tell = (at: number, then: Told['then']) => {
    if (!gate(at)) return;
    const values = { itemId, kind, what: what.trim(), then, pieces: count === null ? null : many };
    const words = `${itemId}: fault of ${kind}, ${what.trim()}`;
    outbox.put({ kind: 'fault', values, words, tourId: show.tourId, showId: show.showId }).then(() => onTold({ kind, then }), setUnkept);
  };
  const press = (then: Told['then'], name: string, look: string) => (
    <button type="button" className={look} disabled={!isReady} onClick={(event) => tell(event.timeStamp, then)}>
      {name}
    </button>
  );
  return (
    <FloorPage
      name={`${itemId}, a fault`}
      title={`${itemId}: fault of ${kind}`}
      back={home}
      foot={
        <>
          <button type="button" className="plain" onClick={onBack}>
            Another kind of fault
          </button>
          {kind === 'sound' && press('bottom', 'It flies at the bottom of a hang', 'plain')}
          {kind === 'looks' ? press('flies', 'Only note it', 'big') : press('out', 'Out of service now', 'warn big')}
        </>
      }
    >
      <Faults of={unkept} />
      <label>
        What is wrong with it?
        <input value={what} maxLength={300} onChange={(event) => setWhat(event.target.value)} />
      </label>
      {count !== null && (
        <label>
          How many of its {count} pieces?
          <input inputMode="numeric" value={pieces} onChange={(event) => setPieces(event.target.value)} />
        </label>
      )}
    </FloorPage>
  );
}
