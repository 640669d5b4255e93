import { useState } from 'react';
import { Link, useParams } from 'react-router';
import { riggingCaution, stepWords, windSentence } from '#drawings';
import { type HangResult, type RunningOrderStep, stepsDown, tapGate } from '#pack-plan';
import { useSettings } from '../../../platform/settings.js';
import { Faults } from '../../../ui/faults.js';
import { Note } from '../../../ui/notes.js';
import { Readings } from '../../hang/readings.js';
import { BarredNotes, useBarred } from '../../plan/barred-notes.js';
import { useHang, useProgress } from '../../plan/use-plan-parts.js';
import { useTicks } from '../../plan/use-ticks.js';
import { FloorPage } from '../page/floor-page.js';
import type { OnFloor } from '../page/on-floor.js';
import { StaysAwake } from '../page/stays-awake.js';
import { ChooseNames } from './choose-names.js';
import { FromPaper } from './from-paper.js';
import { type Names, useNames } from './use-names.js';

/** One hang, hold by hold: what is done up to the next hold, what the cells should read there, one press when it is so. */
export function FlyHang(given: OnFloor) {
  const { hangId = '' } = useParams();
  const query = useHang(given.plan.id, hangId);
  if (query.data) return <TheHang key={hangId} given={given} hang={query.data.hang} />;
  return (
    <FloorPage name="Flying" title="Flying" back={`${given.home}/fly`}>
      {query.isError ? <Faults of={query.error} /> : <p className="quiet">Reading ...</p>}
    </FloorPage>
  );
}

function TheHang({ given, hang }: { given: OnFloor; hang: HangResult }) {
  const { names, choose } = useNames(given.plan.id, hang.hang);
  if (names === null) return <ChooseNames given={given} hang={hang.name} onChosen={choose} />;
  return <HoldByHold given={given} hang={hang} names={names} onNames={() => choose(null)} />;
}

/** Steps up to the next open hold, that hold among them: what is read before it is pressed. */
function untilHold(steps: readonly RunningOrderStep[], ticked: ReadonlySet<string>) {
  const at = steps.findIndex((each) => each.hold && !ticked.has(each.key));
  const before = steps.slice(0, Math.max(0, at)).findLastIndex((each) => each.hold);
  const last = steps.filter((each) => each.hold && ticked.has(each.key)).at(-1);
  return { hold: at < 0 ? undefined : steps[at], read: at < 0 ? [] : steps.slice(before + 1, at), last };
}

/** Whether something of a hang must not fly, and which holds were passed, those done although barred among them. */
function useBarredHang(planId: string, hang: string, ticked: ReadonlySet<string>) {
  const { items, done } = useBarred(planId);
  const although = done.flatMap((each) => (each.hang === hang ? [each.what] : []));
  return { isBarred: items.some((each) => each.hangs.includes(hang)), passed: new Set([...ticked, ...although]) };
}

interface HoldProps {
  readonly given: OnFloor;
  readonly hang: HangResult;
  readonly names: Names;
  readonly onNames: () => void;
}

function HoldByHold({ given, hang, names, onNames }: HoldProps) {
  const [{ show, plan, home, me }, { runningOrder }] = [given, hang];
  const { ticked, tick, unkept } = useTicks({ planId: plan.id, tourId: show.tourId, showId: show.showId });
  const [paper, setPaper] = useState<string | null>(null);
  const [gates] = useState(() => ({ done: tapGate(), undo: tapGate() }));
  const up = untilHold(runningOrder.goingUp, ticked);
  const [isDown, setIsDown] = useState(false);
  const { isBarred, passed } = useBarredHang(plan.id, hang.hang, ticked);
  const steps = isDown ? stepsDown(runningOrder, passed) : runningOrder.goingUp;
  const { hold, read, last } = isDown ? untilHold(steps, ticked) : up;
  const holds = steps.filter((each) => each.hold);
  const done = holds.filter((each) => ticked.has(each.key)).length;
  const by = `${names.leads} and ${names.watches}`;
  const mayTick = plan.state === 'released' && runningOrder.approved !== null && (paper === null || paper.trim() !== '');
  const press = (at: number) => {
    if (!gates.done(at) || !hold) return;
    tick(hold.key, true, `${hang.name}, ${hold.text}`, paper === null ? `with ${by}` : `with ${by}, late from paper: ${paper.trim()}`);
  };
  const undo = (at: number) => {
    gates.done(at);
    if (gates.undo(at) && last) tick(last.key, false, `${hang.name}, taken back: ${last.text}`);
  };
  return (
    <FloorPage
      name={`${hang.name}, flying`}
      title={`${hang.name} ${isDown ? 'comes down' : 'goes up'}: hold ${Math.min(done + 1, holds.length)} of ${holds.length}`}
      back={`${home}/fly`}
      foot={
        <WayOn
          {...{ hold, last, mayTick, home, isDown }}
          mayTurnBack={!isDown && isBarred && up.last !== undefined}
          isPaper={paper !== null}
          onDone={press}
          onUndo={undo}
          onDown={() => setIsDown(true)}
        />
      }
    >
      <Faults of={unkept} />
      {runningOrder.approved === null && (
        <Note weight="stop">Example, not for use: the safety officer has not approved this rigging system.</Note>
      )}
      {plan.state !== 'released' && <Note weight="look">A draft is read, not flown: holds are ticked on a released revision.</Note>}
      {plan.state === 'released' && <BarredNotes planId={plan.id} hang={hang.hang} me={me} />}
      <ThisHold hold={hold} read={read} />
      <Said planId={plan.id} steps={steps} />
      {!isDown && !hold && <AtTrim given={given} hang={hang} />}
      {hold && <FromPaper paper={paper} onPaper={setPaper} />}
      <WhoFlies {...{ by, hang, onNames }} />
      <StaysAwake />
      <p className="caution">{riggingCaution}</p>
    </FloorPage>
  );
}

function WhoFlies({ by, hang, onNames }: { by: string; hang: HangResult; onNames: () => void }) {
  return (
    <>
      <p className="quiet">
        {by} fly it. {windSentence(hang)}
      </p>
      <p className="row">
        <button type="button" className="plain" onClick={onNames}>
          Other people fly it
        </button>
      </p>
    </>
  );
}

function ThisHold({ hold, read }: { hold: RunningOrderStep | undefined; read: readonly RunningOrderStep[] }) {
  const { units } = useSettings();
  if (!hold) return null;
  return (
    <>
      {read.length > 0 && (
        <ol className="until">
          {read.map((each) => (
            <li key={each.key}>
              {each.text}
              {stepWords(each, units).map((one) => (
                <small className="beside" key={one}>
                  {one}
                </small>
              ))}
            </li>
          ))}
        </ol>
      )}
      <div className="answer" role="status">
        Hold. {hold.text}
        {stepWords(hold, units).map((one) => (
          <p key={one}>{one}</p>
        ))}
      </div>
    </>
  );
}

/** What was said with each hold: who flew it, and what was entered late from paper. */
function Said({ planId, steps }: { planId: string; steps: readonly RunningOrderStep[] }) {
  const remarks = useProgress(planId).data?.tickRemarks ?? [];
  const said = steps.flatMap((step) => remarks.filter((each) => each.what === step.key).map((each) => ({ ...each, text: step.text })));
  if (said.length === 0) return null;
  return (
    <details>
      <summary>Holds so far: {said.length}</summary>
      <ul className="plain">
        {said.map(({ what, text, remark, by }) => (
          <li key={what}>
            {text}{' '}
            <span className="quiet">
              {by}, {remark}
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** All holds of the way up are ticked: the cells are read beside what they should show, and it is signed. */
function AtTrim({ given: { plan, show, me }, hang }: { given: OnFloor; hang: HangResult }) {
  return (
    <>
      <div className="answer" role="status">
        ○ All holds of the way up are ticked. Read the load cells at trim.
      </div>
      <Readings
        planId={plan.id}
        isReleased={plan.state === 'released'}
        hang={hang.hang}
        holes={hang.unshared ? hang.unshared.hoists.map((each) => each.hole) : hang.picks.map((each) => each.hole)}
        me={me}
      />
      <p className="row">
        <Link className="btn" to={`/tours/${show.tourId}/shows/${show.showId}/hangs/${encodeURIComponent(hang.hang)}/running`}>
          Sign the inspection and the handover
        </Link>
      </p>
      <p className="quiet">Each signs in an own session: who takes over opens this hang on an own phone.</p>
    </>
  );
}

interface WayOnProps {
  readonly hold: RunningOrderStep | undefined;
  readonly last: RunningOrderStep | undefined;
  readonly mayTick: boolean;
  readonly isPaper: boolean;
  readonly isDown: boolean;
  /** On its way up something of it came to be barred: lowering is never. */
  readonly mayTurnBack: boolean;
  readonly home: string;
  readonly onDone: (at: number) => void;
  readonly onUndo: (at: number) => void;
  readonly onDown: () => void;
}

function WayOn({ hold, last, mayTick, isPaper, isDown, mayTurnBack, home, onDone, onUndo, onDown }: WayOnProps) {
  return (
    <>
      <Link className="btn warn" to={`${home}/fault`}>
        Stop, something is wrong
      </Link>
      {last ? (
        <div className="taken">
          <span>The hold before: noted</span>
          <button type="button" onClick={(event) => onUndo(event.timeStamp)}>
            Undo
          </button>
        </div>
      ) : (
        <div className="taken none">Nothing to take back</div>
      )}
      {hold && mayTurnBack && (
        <button type="button" className="plain" onClick={onDown}>
          Bring it down from here
        </button>
      )}
      {hold ? (
        <button type="button" className="big" disabled={!mayTick} onClick={(event) => onDone(event.timeStamp)}>
          {isPaper ? 'It was so, by the paper' : 'It is so: go on'}
        </button>
      ) : isDown ? (
        <Link className="btn big" to={`${home}/fly`}>
          It is down
        </Link>
      ) : (
        <button type="button" className="plain" onClick={onDown}>
          It comes down
        </button>
      )}
    </>
  );
}
