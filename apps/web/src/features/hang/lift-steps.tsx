import { useMemo, useState } from 'react';
import { drawLift, formatForce, formatMass, formatNumber } from '#drawings';
import { type HangResult, type LiftMoment, liftMoments, worstMoment } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { scrolls } from '../../ui/scrolls.js';

/** The lift of a hang cart by cart: a slider over its moments, the chosen one beside the hang at trim, forces in one scale; computed on this device. */
export function LiftSteps({ hang, hole }: { hang: HangResult; hole?: string }) {
  const moments = useMemo(() => liftMoments(hang), [hang]);
  if (moments.length === 0) return <p className="quiet">This plan does not hold what its lift is computed from: plan the show again.</p>;
  return <Steps moments={moments} loads={hang.lift?.loads ?? []} hole={hole} />;
}

interface StepsProps {
  readonly moments: readonly LiftMoment[];
  readonly loads: readonly string[];
  readonly hole: string | undefined;
}

function Steps({ moments, loads, hole }: StepsProps) {
  const { units } = useSettings();
  const worst = worstMoment(moments, hole);
  const last = moments.length - 1;
  const [at, setAt] = useState(worst);
  // As it hangs, with its line where it has one; coming down follows.
  const trim = Math.max(
    0,
    moments.findLastIndex((each) => each.load === null),
  );
  const moment = moments[at] ?? moments[trim];
  if (!moment) return null;
  const first = (load: number) => moments.findIndex((each) => each.load === load);
  return (
    <div className="lift">
      <div className="row jumps" role="group" aria-label="Go to">
        {loads.map((name, load) => (
          <Jump key={name} to={first(load)} isThere={moment.load === load && at <= trim} setAt={setAt} name={name} />
        ))}
        <Jump to={trim} isThere={at === trim} setAt={setAt} name="At trim" />
        {trim < last && <Jump to={trim + 1} isThere={at > trim} setAt={setAt} name="Coming down" />}
        <Jump to={worst} isThere={at === worst} setAt={setAt} name={hole ? `Worst of hole ${hole}` : 'The worst'} />
      </div>
      <div className="row stepper">
        <button type="button" className="btn plain" disabled={at === 0} onClick={() => setAt(at - 1)}>
          Back
        </button>
        <input
          type="range"
          min={0}
          max={last}
          step={1}
          value={at}
          aria-label="Moment of the lift"
          aria-valuetext={moment.name}
          onChange={(event) => setAt(Number(event.target.value))}
        />
        <button type="button" className="btn plain" disabled={at === last} onClick={() => setAt(at + 1)}>
          On
        </button>
      </div>
      <p aria-live="polite">
        <b>
          {at + 1} of {moments.length}: {moment.name}
        </b>
        {at === worst && ` — the worst of the lift${hole ? ` for hole ${hole}` : ''}`}
      </p>
      <div className="twoup">
        <Drawing of={drawLift(moments, at, units)} />
        <Drawing of={drawLift(moments, trim, units)} />
      </div>
      <Figures moment={moment} trim={moments[trim] ?? moment} />
    </div>
  );
}

interface JumpProps {
  readonly to: number;
  readonly isThere: boolean;
  readonly name: string;
  readonly setAt: (at: number) => void;
}

const Jump = ({ to, isThere, name, setAt }: JumpProps) => (
  <button type="button" className="btn plain" aria-pressed={isThere} onClick={() => setAt(to)}>
    {name}
  </button>
);

/** The figures of the moment beside those at trim. */
function Figures({ moment, trim }: { moment: LiftMoment; trim: LiftMoment }) {
  const { units } = useSettings();
  const most = (of: LiftMoment, newtons: (joint: LiftMoment['joints'][number]) => number) => {
    const [first, ...others] = of.joints;
    if (!first) return '';
    const joint = others.reduce((a, b) => (Math.abs(newtons(b)) > Math.abs(newtons(a)) ? b : a), first);
    return `${formatForce(newtons(joint), units)}, above ${joint.isFrame ? 'the frame of ' : ''}box ${joint.position}`;
  };
  const rows: readonly (readonly [string, (of: LiftMoment) => string])[] = [
    ['Hangs', (of) => `${formatMass(of.massKg, units)}, ${of.boxes.filter((each) => !each.isFrame).length} boxes`],
    ['Grid, nose down', (of) => `${formatNumber(of.tiltDownDeg, 1)}°`],
    ...trim.picks.map(
      ({ hole }) =>
        [`Hole ${hole}`, (of: LiftMoment) => formatForce(of.picks.find((each) => each.hole === hole)?.alongN ?? 0, units)] as const,
    ),
    ['Held aside with', (of) => (of.pull ? formatForce(Math.hypot(of.pull.xN, of.pull.zN), units) : 'nothing')],
    ['Most in a rear link', (of) => most(of, (each) => each.rearLinkN)],
    ['Most on two front pins', (of) => most(of, (each) => each.frontPinsN)],
  ];
  return (
    <div {...scrolls}>
      <table className="tight">
        <thead>
          <tr>
            <th />
            <th>{moment.name}</th>
            <th>{trim.name}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([what, of]) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>{of(moment)}</td>
              <td>{of(trim)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
