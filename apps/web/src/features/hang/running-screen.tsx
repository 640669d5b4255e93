import { Link, useParams } from 'react-router';
import { riggingCaution, stepWords, windSentence } from '#drawings';
import type { RunningOrderStep } from '#pack-plan';
import type { Person } from '../../platform/person.js';
import { useSettings } from '../../platform/settings.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { BarredNotes } from '../plan/barred-notes.js';
import { useHang } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';
import { useTicks } from '../plan/use-ticks.js';
import { Readings } from './readings.js';
import { Signatures } from './signatures.js';

/** The lift sequence of one hang on the phone: holds to tick, which everything waits for, the other steps to read, then inspection and handover. */
export function RunningScreen({ me }: { me: Person }) {
  const { tourId = '', showId = '', hangId = '' } = useParams();
  const query = useShow(tourId, showId);
  return (
    <Loaded query={query}>
      {({ name, inForce }) => {
        if (!inForce?.hangs.includes(hangId)) return <Page title={hangId}>This hang is in no plan of the show.</Page>;
        return <Running me={me} name={name} inForce={inForce} hangId={hangId} tourId={tourId} showId={showId} />;
      }}
    </Loaded>
  );
}

interface RunningProps {
  readonly me: Person;
  readonly name: string;
  readonly inForce: PlanInForce;
  readonly hangId: string;
  readonly tourId: string;
  readonly showId: string;
}

function Running({ me, name, inForce, hangId, tourId, showId }: RunningProps) {
  const query = useHang(inForce.id, hangId);
  return (
    <Loaded query={query}>
      {({ hang }) => {
        const { runningOrder } = hang;
        return (
          <Page
            title={`${hang.name}: lift sequence`}
            lede={
              <>
                <Link to={`/tours/${tourId}/shows/${showId}`}>{name}</Link> · {runningOrder.manual ?? 'no rigging system on file'}.{' '}
                {windSentence(hang)}
              </>
            }
            actions={
              <Link className="btn plain" to={`/print/${tourId}/${showId}/running`} target="_blank">
                Print the lift sequences
              </Link>
            }
          >
            {!runningOrder.approved && (
              <Note weight="stop">Example, not for use: the safety officer has not approved this rigging system.</Note>
            )}
            {inForce.state === 'released' && <BarredNotes planId={inForce.id} hang={hang.hang} me={me} />}
            <Steps
              number={1}
              title="Going up"
              steps={runningOrder.goingUp}
              isApproved={runningOrder.approved !== null}
              inForce={inForce}
              tourId={tourId}
              showId={showId}
            />
            <Part number={2} title="Load cells at trim">
              <Readings
                planId={inForce.id}
                isReleased={inForce.state === 'released'}
                hang={hang.hang}
                holes={hang.unshared ? hang.unshared.hoists.map((each) => each.hole) : hang.picks.map((each) => each.hole)}
                me={me}
              />
            </Part>
            <Signatures inForce={inForce} hang={hang} me={me} />
            <Steps
              number={4}
              title="Coming down"
              steps={runningOrder.comingDown}
              isApproved={runningOrder.approved !== null}
              inForce={inForce}
              tourId={tourId}
              showId={showId}
            />
          </Page>
        );
      }}
    </Loaded>
  );
}

function Steps({
  number,
  title,
  steps,
  isApproved,
  inForce,
  tourId,
  showId,
}: {
  number: number;
  title: string;
  steps: readonly RunningOrderStep[];
  /** What nobody approved is read, and cannot be ticked. */
  isApproved: boolean;
  inForce: PlanInForce;
  tourId: string;
  showId: string;
}) {
  const { ticked, tick, unkept } = useTicks({ planId: inForce.id, tourId, showId });
  const wordsOf = (step: RunningOrderStep, done: boolean) => `${inForce.show.name}, ${done ? 'done' : 'taken back'}: ${step.text}`;
  const waitsAt = steps.findIndex((each) => each.hold && !ticked.has(each.key));
  return (
    <Part number={number} title={title} margin={<p className="caution">{riggingCaution}</p>}>
      <Faults of={unkept} />
      <ol className="steps floor">
        {steps.map((step, index) => (
          <li key={step.key}>
            {step.load && step.load.id !== steps[index - 1]?.load?.id && (
              <p className="stephead">
                <b>{step.load.id}</b>: cart <span className="mono">{step.load.cart ?? 'none found'}</span>
                <br />
                <span className="quiet">splays {step.load.splays}</span>
              </p>
            )}
            {step.hold ? (
              <label className="hold">
                <input
                  type="checkbox"
                  checked={ticked.has(step.key)}
                  disabled={!isApproved || (waitsAt >= 0 && index > waitsAt && !ticked.has(step.key))}
                  onChange={(event) => tick(step.key, event.target.checked, wordsOf(step, event.target.checked))}
                />
                <StepText step={step} />
              </label>
            ) : (
              <p className="read">
                <StepText step={step} />
              </p>
            )}
          </li>
        ))}
      </ol>
      {steps.length === 0 && <p>The rigging system has no such steps on file.</p>}
    </Part>
  );
}

function StepText({ step }: { step: RunningOrderStep }) {
  const { units } = useSettings();
  return (
    <span>
      {step.hold && <b>Hold. </b>}
      {step.text}
      {stepWords(step, units).map((each) => (
        <small className="beside" key={each}>
          {each}
        </small>
      ))}
    </span>
  );
}
