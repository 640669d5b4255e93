import { useState } from 'react';
import { type BenchCheck, afterBench, benchChecks, tapGate } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { Faults } from '../../../ui/faults.js';
import { useCarts } from '../../plan/use-plan-parts.js';
import { Camera } from '../page/camera.js';
import { CodeField } from '../page/code-field.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { nameRead } from '../page/name-read.js';
import { signal } from '../page/signal.js';

const checkWords: Readonly<Record<BenchCheck, string>> = {
  sound: 'Sound or impedance',
  drivers: 'Drivers',
  connectors: 'Connectors',
  pins: 'Pins and pin holes',
  links: 'Links',
  handles: 'Handles',
  label: 'Label',
};
const checks = Object.keys(benchChecks) as BenchCheck[];

/** A box is read, looked over in one pass, and passed or out with what. Then the next. */
export function Bench(given: OnFloor) {
  const { plan, home, me } = given;
  const loads = useCarts(plan.id).data?.loads ?? [];
  const known = loads.flatMap((load) => load.boxes.flatMap(({ serial }) => (serial === null ? [] : [{ id: serial, kind: 'box' }])));
  const [box, setBox] = useState<string | null>(null);
  const [said, setSaid] = useState<{ readonly isRight: boolean; readonly sentence: string } | null>(null);
  const [failed, setFailed] = useState<readonly BenchCheck[]>([]);
  const [remark, setRemark] = useState('');
  const onCode = async (code: string) => {
    const name = await nameRead(plan.id, code, known);
    const isBox = name.is === 'known' && name.kind === 'box';
    signal(isBox);
    if (!isBox) return setSaid({ isRight: false, sentence: name.is === 'said' ? name.sentence : `${name.id} is no box.` });
    setFailed([]);
    setRemark('');
    setSaid(null);
    return setBox(name.id);
  };
  const load = loads.find((each) => each.boxes.some((one) => one.serial === box));
  const noted = (isOut: boolean) => {
    setSaid({ isRight: !isOut, sentence: isOut ? `${box} is out of service: set it aside.` : `${box} passed.` });
    setBox(null);
  };
  return (
    <FloorPage
      name="Bench test"
      title={box ? `${box} on the bench` : 'Bench test'}
      back={`${home}/prep`}
      foot={box !== null && <Outcome given={given} box={box} failed={failed} remark={remark} onNoted={noted} onBack={() => setBox(null)} />}
    >
      {said && (
        <div className={said.isRight ? 'answer' : 'answer stop'} role={said.isRight ? 'status' : 'alert'}>
          <i>{said.isRight ? '○ ' : '■ '}</i>
          {said.sentence}
        </div>
      )}
      {me.role === 'safety' && <p className="quiet">Boxes are tested by the warehouse and the system tech.</p>}
      {box === null ? (
        <>
          <CodeField label="Scan or type a box" onCode={(code) => void onCode(code)} />
          <Camera onCode={(code) => void onCode(code)} />
        </>
      ) : (
        <>
          <p className="lede">
            {load ? `Goes into ${load.cart ?? 'no cart'}, ${load.name}.` : 'In no cart of this show.'} Press what is not right.
          </p>
          <Checks failed={failed} remark={remark} onFailed={setFailed} onRemark={setRemark} />
        </>
      )}
    </FloorPage>
  );
}

interface ChecksProps {
  readonly failed: readonly BenchCheck[];
  readonly remark: string;
  readonly onFailed: (failed: readonly BenchCheck[]) => void;
  readonly onRemark: (remark: string) => void;
}

/** Everything is good unless it is pressed. */
function Checks({ failed, remark, onFailed, onRemark }: ChecksProps) {
  return (
    <>
      {checks.map((each) => (
        <button
          key={each}
          type="button"
          className={failed.includes(each) ? 'job plain pick failed' : 'job plain pick'}
          aria-pressed={failed.includes(each)}
          onClick={() => onFailed(failed.includes(each) ? failed.filter((one) => one !== each) : [...failed, each])}
        >
          <b>{checkWords[each]}</b>
          <div className="n">
            <small>{failed.includes(each) ? '■ not right' : '○'}</small>
          </div>
        </button>
      ))}
      {failed.length > 0 && (
        <label>
          What it is, in a few words
          <input value={remark} maxLength={200} onChange={(event) => onRemark(event.target.value)} />
        </label>
      )}
    </>
  );
}

interface OutcomeProps {
  readonly given: OnFloor;
  readonly box: string;
  readonly failed: readonly BenchCheck[];
  readonly remark: string;
  readonly onNoted: (isOut: boolean) => void;
  readonly onBack: () => void;
}

function Outcome({ given: { plan, show, me }, box, failed, remark, onNoted, onBack }: OutcomeProps) {
  const outbox = useOutbox();
  const [unkept, setUnkept] = useState<unknown>(null);
  const [gate] = useState(() => tapGate());
  const isOut = afterBench(failed)?.then === 'out';
  const note = (at: number) => {
    if (!gate(at)) return;
    const values = { planId: plan.id, item: box, itemId: box, failed, remark };
    const words = `${show.name}: ${box} on the bench, ${failed.length === 0 ? 'passed' : failed.join(', ')}`;
    signal(!isOut);
    outbox.put({ kind: 'bench', values, words, tourId: show.tourId, showId: show.showId }).then(() => onNoted(isOut), setUnkept);
  };
  const name = failed.length === 0 ? 'All good: passed' : isOut ? 'Out of service now' : 'Passed; note the label';
  return (
    <>
      <Faults of={unkept} />
      <button type="button" className="plain" onClick={onBack}>
        Another box
      </button>
      <button
        type="button"
        className={isOut ? 'warn big' : 'big'}
        disabled={me.role === 'safety'}
        onClick={(event) => note(event.timeStamp)}
      >
        {name}
      </button>
    </>
  );
}
