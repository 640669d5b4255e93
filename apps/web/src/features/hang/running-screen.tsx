import { useMutation, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { Link, useParams } from 'react-router';
import { graphql } from '#contracts';
import { riggingCaution, stepWords, windSentence } from '#drawings';
import type { HangResult, RunningOrderStep } from '#pack-plan';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { useSettings } from '../../platform/settings.js';
import { momentOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { BarredNotes } from '../plan/barred-notes.js';
import { useHang } from '../plan/use-plan-parts.js';
import { type PlanInForce, useShow } from '../plan/use-show.js';
import { useTicks } from '../plan/use-ticks.js';
import { Readings, useRiggingRecord } from './readings.js';

const signMutation = graphql(`
  mutation SignOff($planId: ID!, $hang: String!, $kind: String!, $name: String!, $remark: String!) {
    signOff(planId: $planId, hang: $hang, kind: $kind, name: $name, remark: $remark) { signOffs { id } }
  }
`);

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

function Signatures({ inForce, hang, me }: { inForce: PlanInForce; hang: HangResult; me: Person }) {
  const record = useRiggingRecord(inForce.id);
  const client = useQueryClient();
  const [typed, setName] = useState<string | null>(null);
  const [remark, setRemark] = useState('');
  const own = (record.data?.signOffs ?? []).filter((each) => each.hang === hang.hang);
  const kind = own.some((each) => each.kind === 'inspected') ? 'handed over' : 'inspected';
  const inspector = own.find((each) => each.kind === 'inspected')?.name;
  const name = typed ?? (inspector === me.name ? '' : me.name);
  const sign = useMutation({
    mutationFn: () => request(signMutation, { planId: inForce.id, hang: hang.hang, kind, name, remark }),
    onSuccess: async () => {
      setRemark('');
      setName(null);
      await client.invalidateQueries({ queryKey: ['rigging', inForce.id] });
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    sign.mutate();
  };
  return (
    <Part number={3} title="Inspection after assembly, and handover">
      {own.map((each) => (
        <p key={each.id}>
          ○ {each.kind === 'inspected' ? 'Inspected after assembly' : 'Handed over'}, signed {each.name}, {momentOf(each.signedAt)} (as{' '}
          {each.signedBy}){each.remark && `: ${each.remark}`}
        </p>
      ))}
      <Faults of={sign.error ?? record.error} />
      {me.role === 'warehouse' ? (
        <p className="quiet">System tech and safety officer sign here.</p>
      ) : (
        <form onSubmit={submit} className="fields">
          <label>
            {inspector === undefined
              ? 'Name of the person who inspected, as it is on file'
              : `Name of who takes over: another than ${inspector}, such as the venue’s rigger`}
            <input value={name} onChange={(event) => setName(event.target.value)} />
          </label>
          <label>
            Remarks
            <input value={remark} onChange={(event) => setRemark(event.target.value)} />
          </label>
          <button type="submit" disabled={sign.isPending || name.trim() === ''}>
            {kind === 'inspected' ? 'Sign the inspection' : 'Sign the handover'}
          </button>
        </form>
      )}
    </Part>
  );
}
